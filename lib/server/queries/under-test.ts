import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { reader } from '../database/connections';

/** A tray of a lot that is open. */
export interface UnderTest {
  number: string;
  setOn: string;
}

/** Judgements of lots that no open tray holds: what is being tested is not due. */
export const NOT_UNDER_TEST = {
  lot: { trays: { none: { status: 'open' } } },
} as const satisfies Prisma.LotJudgementWhereInput;

/**
 * Lots of which a test is under way: one statement. Such a lot is not to be set again.
 *
 * @param lotNumbers  which lots
 * @returns by lot number, the tray set last
 * Checked in tests/server/queries/lots-to-plan.test.ts
 */
export async function lotsUnderTest(lotNumbers: readonly string[]): Promise<Map<string, UnderTest>> {
  if (lotNumbers.length === 0) return new Map();
  const trays = await reader().tray.findMany({
    where: { status: 'open', lot: { number: { in: [...lotNumbers] } } },
    orderBy: [{ setOn: 'asc' }, { number: 'asc' }],
    select: { number: true, setOn: true, lot: { select: { number: true } } },
  });
  return new Map(trays.map(({ lot, ...tray }) => [lot.number, tray]));
}
