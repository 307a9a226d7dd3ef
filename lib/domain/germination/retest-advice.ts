/*
 * When a finished test calls for another, and what to do differently. Advice for the bench, not a verdict on the lot:
 * when a lot is next due by its forecast is worked out elsewhere.
 */
import type { TestSummary } from './result';
import type { TwoResults } from './two-results';

export type RetestReason = 'replicates-disagree' | 'differs-from-before' | 'dormant-seed' | 'few-seeds';

export interface RetestAdvice {
  reason: RetestReason;
  /** one or two plain sentences */
  sentence: string;
}

/** Fewer seeds than this leave an interval of 20 points and more at middling germination: our own choice. */
const FEW_SEEDS = 100;
/** Share of fresh seed from which the test says more about dormancy than about germination: our own choice. */
const MUCH_FRESH_SEED = 0.1;

/**
 * Reasons to test a lot again that one finished test gives.
 *
 * @param summary  from `summariseTest`
 * @param before   this test compared with the lot's test before it, `rose` when this one is the higher; null without one
 * @returns the reasons that hold, the most pressing first; empty when the test stands by itself
 * Checked in tests/domain/germination/retest-advice.test.ts
 */
export function retestAdvice(summary: TestSummary, before: (TwoResults & { rose: boolean }) | null): RetestAdvice[] {
  const advice: RetestAdvice[] = [];
  if (summary.withinTolerance === false) {
    advice.push({
      reason: 'replicates-disagree',
      sentence:
        'Test again: the replicates lie further apart than chance explains. Look for a dish that was dry or mouldy.',
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
  if (summary.seeds < FEW_SEEDS) {
    advice.push({
      reason: 'few-seeds',
      sentence: `With ${summary.seeds} seeds the truth may lie far off. Set ${FEW_SEEDS} or more when the lot can spare them.`,
    });
  }
  return advice;
}
