import type { Prisma } from '@/generated/prisma/client';
import { isFreeForTest } from '@/lib/domain/stock/free-withdrawal';
import { NAMED_BY_TESTS, testNaming } from '../named-by-tests';
import { fieldError } from './field-error';

/** A weighed withdrawal may hold so many standard deviations more seeds than the ledger says. */
const MOST_DEVIATIONS = 2;

export interface TestWithdrawal {
  id: string;
  on: string;
  seeds: number;
  packet: { id: string; number: string };
}

/**
 * Seed that was taken out for a test before the test was written down.
 *
 * @param test  the lot, how many seeds the test used, and the day on which it began with the name of that field
 * @throws AppError beside `withdrawalId` when the line is not of that lot, not free, or holds fewer seeds; beside the day
 *   when it lies before the line's
 */
export async function requireTestWithdrawal(
  tx: Prisma.TransactionClient,
  movementId: string,
  test: { lot: { id: string; number: string }; seeds: number; began: { on: string; field: string } },
): Promise<TestWithdrawal> {
  const line = await tx.movement.findUnique({
    where: { id: movementId },
    select: {
      id: true,
      on: true,
      reason: true,
      seeds: true,
      seedsSd: true,
      note: true,
      corrected: { select: { id: true } },
      ...NAMED_BY_TESTS,
      packet: { select: { id: true, number: true, lotId: true } },
    },
  });
  if (line?.packet.lotId !== test.lot.id) {
    throw fieldError({ withdrawalId: `Choose seed that was taken out of lot ${test.lot.number}.` });
  }
  const user = testNaming(line);
  if (user) throw fieldError({ withdrawalId: `This seed went into ${user.number} already: choose another, or none.` });
  if (!isFreeForTest({ ...line, usedBy: 0, takenBack: line.corrected !== null })) {
    throw fieldError({
      withdrawalId: 'This seed was not taken out for a test, or was put back: choose another, or none.',
    });
  }
  const seeds = -line.seeds;
  const most = Math.floor(seeds + MOST_DEVIATIONS * (line.seedsSd ?? 0));
  if (test.seeds > most) {
    throw fieldError({
      withdrawalId: `Only ${seeds} seeds were taken out then, and this test has ${test.seeds}. Correct the counts, or choose other seed.`,
    });
  }
  if (test.began.on < line.on) {
    throw fieldError({ [test.began.field]: `This seed was taken out on ${line.on}: choose that day or later.` });
  }
  const { id, number } = line.packet;
  return { id: line.id, on: line.on, seeds, packet: { id, number } };
}
