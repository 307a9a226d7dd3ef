import type { Prisma } from '@/generated/prisma/client';

/**
 * How many seeds of a crop usually weigh a gram: the middle of what the sources say.
 *
 * @returns seeds per gram, three figures; null when no source says
 */
export async function usualSeedsPerGram(tx: Prisma.TransactionClient, cropId: string): Promise<number | null> {
  const facts = await tx.cropFact.findMany({
    where: { cropId, kind: 'seeds per gram' },
    select: { lower: true, upper: true },
  });
  const figures = facts.flatMap((fact) => [fact.lower, fact.upper]).filter((figure) => figure !== null && figure > 0);
  if (figures.length === 0) return null;
  // The geometric middle: a range of 100 to 400 is as wrong at either end by a factor of two.
  const middle = Math.sqrt(Math.min(...(figures as number[])) * Math.max(...(figures as number[])));
  return Number(middle.toPrecision(3));
}
