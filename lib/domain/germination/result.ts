/*
 * The result of a germination test: what it says about the lot, and whether it can be believed.
 */
import { binomialInterval, type Interval } from '../statistics/binomial-interval';
import { type Heterogeneity, replicateHeterogeneity } from './heterogeneity';
import { joinIntoHundreds, rangeInPoints } from './normal-count';
import { type ReplicateTolerance, replicateTolerance, type ToleranceBasis } from './replicate-tolerance';
import { roundedPercentages } from './rounded-percentages';
import { type ClassCounts, type ClassedReplicate, requireClassedReplicates, totalByClass } from './seed-classes';

export interface Estimate {
  /** proportion in [0, 1] */
  proportion: number;
  interval: Interval;
}

export interface TestSummary {
  /** seeds set in all */
  seeds: number;
  /** replicates as set */
  replicateCount: number;
  /** seeds of each class in all */
  totals: ClassCounts;
  /** normal seedlings of all seeds */
  germination: Estimate;
  /** normal, fresh and hard seeds of all seeds: the alive fraction */
  viability: Estimate;
  /** whole percents that add to 100 */
  roundedPercentages: ClassCounts;
  /** replicates as compared for their range: 8 x 50 and 16 x 25 are joined into four of 100 */
  comparedReplicates: number;
  /** highest less lowest germination of the compared replicates, percentage points; null with one replicate */
  rangeBetweenReplicates: number | null;
  /** largest such range that chance explains, percentage points; null where none can be given */
  toleratedRange: number | null;
  /** 'published': 7 CFR 201.55; 'derived': docs/methods/replicate-tolerance.md; null where none can be given */
  toleranceBasis: ToleranceBasis | null;
  /** why there is no tolerated range; null where there is one */
  toleranceRefusal: 'one-replicate' | 'too-few-seeds' | null;
  /** null where no tolerated range can be given */
  withinTolerance: boolean | null;
  /** null with one replicate */
  heterogeneity: Heterogeneity | null;
}

/**
 * Summarises a finished germination test.
 *
 * The intervals take all seeds as independent. Where the replicates differ by more than chance (`withinTolerance`
 * false, a small p-value) they are too narrow, and the test is to be done again rather than believed.
 *
 * @param input.replicates  every dish with its seeds and its five classes (integers >= 0 that add to the seeds). Count
 *                          as hard or fresh only seed shown to be alive, because viability counts it so
 * @param input.level       probability in (0, 1) of the intervals, default 0.95
 * @returns proportions 0-1, Wilson intervals, whole percents, and the agreement of the replicates
 * @throws RangeError when there is no replicate, a count is not a whole number >= 0, the classes do not add to the
 *         seeds, or the level is outside (0, 1)
 * Checked in tests/domain/germination/result.test.ts; its parts against R
 */
export function summariseTest({
  replicates,
  level = 0.95,
}: {
  replicates: readonly ClassedReplicate[];
  level?: number;
}): TestSummary {
  requireClassedReplicates('summariseTest', replicates);
  const totals = totalByClass(replicates);
  const seeds = replicates.reduce((sum, replicate) => sum + replicate.seeds, 0);
  const compared = joinIntoHundreds(replicates);
  const range = compared.length > 1 ? rangeInPoints(compared) : null;
  return {
    seeds,
    replicateCount: replicates.length,
    totals,
    germination: estimate(totals.normal, seeds, level),
    viability: estimate(totals.normal + totals.fresh + totals.hard, seeds, level),
    roundedPercentages: roundedPercentages(totals),
    comparedReplicates: compared.length,
    rangeBetweenReplicates: range,
    ...judgeRange(range, replicateTolerance(compared)),
    heterogeneity: replicateHeterogeneity(replicates),
  };
}

function estimate(successes: number, trials: number, level: number): Estimate {
  return {
    proportion: successes / trials,
    interval: binomialInterval({ successes, trials, level, method: 'wilson' }),
  };
}

function judgeRange(
  range: number | null,
  tolerance: ReplicateTolerance,
): Pick<TestSummary, 'toleratedRange' | 'toleranceBasis' | 'toleranceRefusal' | 'withinTolerance'> {
  if (!tolerance.ok || range === null) {
    const refusal = tolerance.ok ? 'one-replicate' : tolerance.reason;
    return { toleratedRange: null, toleranceBasis: null, toleranceRefusal: refusal, withinTolerance: null };
  }
  return {
    toleratedRange: tolerance.toleratedRange,
    toleranceBasis: tolerance.basis,
    toleranceRefusal: null,
    withinTolerance: range <= tolerance.toleratedRange,
  };
}
