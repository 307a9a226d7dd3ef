/*
 * When a finished test calls for another, and what to do differently. Advice for the bench, not a verdict on the lot:
 * when a lot is next due by its forecast is worked out elsewhere.
 *
 * 7 CFR 201.55 (edition of 2015) has five reasons to test again: (a) replicates out of tolerance, (b) firm seed that has
 * not germinated, (c) conditions, classing, moulds or counting that make the result doubtful, (d) seedlings injured by
 * chemicals, then in soil or sand, (e) no two satisfactory tests within tolerance. Counts cannot show (c): that is for
 * whoever stood at the bench. The rule names no shares; those below are our own choice.
 */
import type { TestSummary } from './result';
import { compareTwoResults, type GerminationCount, type TwoResults } from './two-results';

export type RetestReason =
  | 'replicates-disagree'
  | 'no-two-agree'
  | 'differs-from-before'
  | 'dormant-seed'
  | 'hard-seed'
  | 'abnormal-seedlings'
  | 'few-seeds';

export interface RetestAdvice {
  reason: RetestReason;
  /** one or two plain sentences */
  sentence: string;
}

/** Fewer seeds than this leave an interval of 20 points and more at middling germination: our own choice. */
const FEW_SEEDS = 100;
/** Share of fresh seed from which the test says more about dormancy than about germination: our own choice. */
const MUCH_FRESH_SEED = 0.1;
/** Share of hard seed from which it matters whether it is alive: our own choice. */
const MUCH_HARD_SEED = 0.1;
/** Share of abnormal seedlings from which something may have harmed them: our own choice. */
const MANY_ABNORMAL_SEEDLINGS = 0.1;

/** What is known of a lot beside the test itself. */
export interface RetestCircumstances {
  /** the seed was treated with something */
  treated?: boolean;
  /** the lot's tests of about the same time, this one included */
  ofOneTime?: readonly GerminationCount[];
}

/**
 * Whether a lot has two tests or more of about one time and no two of them agree.
 *
 * @param tests  germinated and seeds of each
 * @returns false for fewer than two tests
 * @throws RangeError when a count is not an integer in its range
 * @see 7 CFR 201.55(e)
 * Checked in tests/domain/germination/retest-advice.test.ts
 */
export function noTwoAgree(tests: readonly GerminationCount[]): boolean {
  if (tests.length < 2) return false;
  return tests.every((one, i) => tests.slice(i + 1).every((other) => !compareTwoResults(one, other).compatible));
}

/**
 * Reasons to test a lot again that one finished test gives.
 *
 * @param summary  from `summariseTest`
 * @param before   this test compared with the lot's test before it, `rose` when this one is the higher; null without one
 * @param more     what else is known of the lot
 * @returns the reasons that hold, the most pressing first; empty when the test stands by itself
 * Checked in tests/domain/germination/retest-advice.test.ts
 */
export function retestAdvice(
  summary: TestSummary,
  before: (TwoResults & { rose: boolean }) | null,
  { treated = false, ofOneTime = [] }: RetestCircumstances = {},
): RetestAdvice[] {
  const advice: RetestAdvice[] = [];
  if (summary.withinTolerance === false) {
    advice.push({
      reason: 'replicates-disagree',
      sentence:
        'Test again: the replicates lie further apart than chance explains. Look for a dish that was dry or mouldy.',
    });
  }
  const isAlone = noTwoAgree(ofOneTime);
  if (isAlone) {
    advice.push({
      reason: 'no-two-agree',
      sentence:
        'Test again: of the tests of about this time no two agree. Go on until two do, and take those for the lot.',
    });
  }
  if (before !== null && !before.compatible && before.rose) {
    advice.push({
      reason: 'differs-from-before',
      sentence:
        'Test again: seed does not come back to life, so one of the two tests is wrong, or seed was dormant in the first.',
    });
  }
  if (summary.totals.fresh / summary.seeds >= MUCH_FRESH_SEED) {
    advice.push({
      reason: 'dormant-seed',
      sentence: 'Much seed stayed fresh: it is dormant. Break the dormancy as the method says, and test again.',
    });
  }
  if (summary.totals.hard / summary.seeds >= MUCH_HARD_SEED) {
    advice.push({
      reason: 'hard-seed',
      sentence:
        'Much seed stayed hard. Scarify some of it and see whether it grows: only then is it known how much of it is alive.',
    });
  }
  if (summary.totals.abnormal / summary.seeds >= MANY_ABNORMAL_SEEDLINGS) {
    advice.push({
      reason: 'abnormal-seedlings',
      sentence: treated
        ? 'Many seedlings are abnormal, and the seed was treated: test again in soil or sand, where a treatment harms less.'
        : 'Many seedlings are abnormal. If chemicals or fumes may have reached them, test again in soil or sand.',
    });
  }
  if (summary.seeds < FEW_SEEDS) {
    advice.push({
      reason: 'few-seeds',
      sentence: `With ${summary.seeds} seeds the truth may lie far off. Set ${FEW_SEEDS} or more when the lot can spare them.`,
    });
  }
  return advice;
}
