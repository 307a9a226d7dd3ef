import 'server-only';
import { reader } from '../database/connections';
import { NOT_UNDER_TEST } from './under-test';

const MOST_TOLD = 60;

export interface TestComing {
  lotNumber: string;
  accessionName: string;
  cropName: string;
  testDueOn: string;
}

/**
 * Lots whose next test falls due in a stretch of days and of which none is under way, by date.
 *
 * @param stretch  first and last calendar date
 * @returns the first of them, and how many there are
 * Checked in tests/server/queries/tests-coming.test.ts
 */
export async function findTestsComing(stretch: {
  from: string;
  until: string;
}): Promise<{ rows: TestComing[]; total: number }> {
  const where = {
    testDueOn: { gte: stretch.from, lte: stretch.until },
    ...NOT_UNDER_TEST,
  };
  const [rows, total] = await Promise.all([
    reader().lotJudgement.findMany({
      where,
      orderBy: [{ testDueOn: 'asc' }, { lotNumber: 'asc' }],
      take: MOST_TOLD,
      select: { lotNumber: true, accessionName: true, cropName: true, testDueOn: true },
    }),
    reader().lotJudgement.count({ where }),
  ]);
  return { rows: rows.map((row) => ({ ...row, testDueOn: row.testDueOn ?? stretch.from })), total };
}
