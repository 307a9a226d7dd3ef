/*
 * What a test of a stored lot must tell: whether the lot is above the line at which it is regrown, or below it. Lots within
 * a few points of the line are let alone: there either answer does little harm, and telling them apart takes thousands of
 * seeds.
 */
import type { ErrorGoal } from '../sample-size/single-test-power';

/** Points either side of the line within which either answer will do. Our own choice, as in Reference. */
const MARGIN = 0.05;
/** Near the top there is less room: a lot cannot be told from more than everything. Our own choice, as in Reference. */
const SHARE_OF_ROOM = 0.6;
/** Chance of keeping a lot that is as poor as the margin, and of regrowing one as good as it. Our own choice. */
const WRONG_AT_MOST = 0.05;

/** Lines that tests are planned for. Below, hardly a seed grows; above, no count can tell. */
const LINE = { lowest: 0.1, highest: 0.98 } as const;

/**
 * What must be told apart around a line, and how often it may go wrong.
 *
 * @param line  viability at which the lot is regrown, proportion in (0, 1); taken to the nearest whole percent from 10 to
 *              98, so that lots share their plans
 * @returns levels (proportions) and limits of error
 * @throws RangeError when the line is outside (0, 1)
 * Checked in tests/domain/germination/plan/test-goal.test.ts
 */
export function testGoal(line: number): ErrorGoal & { line: number } {
  if (!(line > 0 && line < 1)) throw new RangeError(`testGoal: line must be in (0, 1), got ${line}`);
  const percent = Math.round(100 * Math.min(LINE.highest, Math.max(LINE.lowest, line)));
  const margin = Math.min(MARGIN, Math.floor((100 - percent) * SHARE_OF_ROOM * 10) / 1000);
  return {
    line: percent / 100,
    poor: percent / 100 - margin,
    good: percent / 100 + margin,
    falseKeep: WRONG_AT_MOST,
    falseRegrow: WRONG_AT_MOST,
  };
}
