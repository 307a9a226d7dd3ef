import type { Prisma } from '@/generated/prisma/client';
import type { ClassedReplicate } from '@/lib/domain/germination/seed-classes';

interface TestToCompare {
  lotId: string;
  setOn: string;
  finishedOn: string;
  replicates: readonly ClassedReplicate[];
  /** the test that it is a version of, if any */
  ownId: string | null | undefined;
  /** look among tests written down by hand alone: two trays set on one day may well end alike */
  onlyByHand: boolean;
}

/**
 * A test of the same lot with the same days and the same counts, as when a form is sent twice: it must not count as two,
 * which would pretend twice the evidence.
 *
 * @returns its number; null when there is none
 */
export async function findTwinTest(
  tx: Prisma.TransactionClient,
  { lotId, setOn, finishedOn, replicates, ownId, onlyByHand }: TestToCompare,
): Promise<string | null> {
  const alike = await tx.germinationTest.findMany({
    where: { lotId, setOn, finishedOn, correctedBy: null, ...(onlyByHand ? { trayId: null } : {}) },
    select: {
      id: true,
      number: true,
      replicates: { omit: { testId: true, position: true }, orderBy: { position: 'asc' } },
    },
  });
  const written = JSON.stringify(replicates.map(inOrder));
  return (
    alike.find((test) => test.id !== ownId && JSON.stringify(test.replicates.map(inOrder)) === written)?.number ?? null
  );
}

const inOrder = ({ seeds, normal, abnormal, hard, fresh, dead }: ClassedReplicate) => [
  seeds,
  normal,
  abnormal,
  hard,
  fresh,
  dead,
];
