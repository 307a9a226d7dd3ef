import type { Prisma } from '@/generated/prisma/client';
import type { ClassedReplicate } from '@/lib/domain/germination/seed-classes';

/** A finished test as it stands in the collection. */
export interface TestAsWritten {
  id: string;
  number: string;
  lotId: string;
  setOn: string;
  finishedOn: string;
  method: string | null;
  notes: string | null;
  replicates: ClassedReplicate[];
}

/**
 * The test that speaks for a tray: what closing it wrote, or what somebody has corrected it to since, by closing again or
 * by hand.
 *
 * @returns null while the tray was never closed
 */
export async function latestVersion(tx: Prisma.TransactionClient, trayId: string): Promise<TestAsWritten | null> {
  let test = await tx.germinationTest.findFirst({ where: { trayId }, orderBy: { id: 'desc' }, select: VERSION });
  // A line of corrections: each test is corrected once at most.
  while (test?.correctedBy) {
    test = await tx.germinationTest.findUnique({ where: { id: test.correctedBy.id }, select: VERSION });
  }
  if (!test) return null;
  const { correctedBy: _, replicates, ...written } = test;
  return {
    ...written,
    replicates: replicates.map(({ seeds, normal, abnormal, hard, fresh, dead }) => ({
      ...{ seeds, normal, abnormal, hard, fresh, dead },
    })),
  };
}

const VERSION = {
  id: true,
  number: true,
  lotId: true,
  setOn: true,
  finishedOn: true,
  method: true,
  notes: true,
  replicates: { omit: { testId: true }, orderBy: { position: 'asc' } },
  correctedBy: { select: { id: true } },
} as const;
