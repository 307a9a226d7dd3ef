import 'server-only';
import { reader } from '../database/connections';

/** What planning a lot's test needs to know of it, as last judged. */
export interface LotToTest {
  number: string;
  accessionName: string;
  cropName: string;
  /** the viability below which it is regrown, proportion; null when the lot is not judged */
  threshold: number | null;
  seedsLeft: number;
  /** seeds that regrowing it takes; null when not reckoned */
  seedsNeeded: number | null;
}

/**
 * @param number  lot number
 * @returns null when there is no such lot, or it was not judged yet
 * Checked in tests/server/queries/lot-to-test.test.ts
 */
export async function getLotToTest(number: string): Promise<LotToTest | null> {
  const judged = await reader().lotJudgement.findFirst({
    where: { lotNumber: number },
    select: {
      lotNumber: true,
      accessionName: true,
      cropName: true,
      threshold: true,
      seedsLeft: true,
      seedsNeeded: true,
    },
  });
  if (!judged) return null;
  const { lotNumber, ...rest } = judged;
  return { number: lotNumber, ...rest };
}
