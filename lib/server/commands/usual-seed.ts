import type { Prisma } from '@/generated/prisma/client';

import { usualSeedWeightError } from '@/lib/domain/stock/spread-of-amount';

/** How many seeds of a crop usually weigh a gram. */
export interface UsualSeed {
  /** the middle of what the sources say, three figures */
  seedsPerGram: number;
  /** how far a lot's seed may be from it: relative standard deviation */
  error: number;
}

/** @returns null when no source says */
export async function usualSeed(tx: Prisma.TransactionClient, cropId: string): Promise<UsualSeed | null> {
  const facts = await tx.cropFact.findMany({
    where: { cropId, kind: 'seeds per gram' },
    select: { lower: true, upper: true },
  });
  const figures = facts
    .flatMap((fact) => [fact.lower, fact.upper])
    .filter((figure): figure is number => figure !== null && figure > 0);
  if (figures.length === 0) return null;
  const [lower, upper] = [Math.min(...figures), Math.max(...figures)];
  // The geometric middle: a range of 100 to 400 is as wrong at either end by a factor of two.
  return {
    seedsPerGram: Number(Math.sqrt(lower * upper).toPrecision(3)),
    error: usualSeedWeightError(lower, upper),
  };
}
