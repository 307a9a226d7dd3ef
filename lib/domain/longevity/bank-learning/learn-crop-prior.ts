/**
 * What a bank's own tests say of a crop: the initial viability that its lots typically have, and how fast they age
 * relative to the published rate, each with its spread from lot to lot and how sure it is.
 *
 * It is empirical Bayes: the belief that makes all lots' tests most plausible, held back by the published figures, which
 * count as three lots. The result is a suggestion. Nobody's judgement of a lot changes until a steward takes it over.
 */
import { normalCdf, normalQuantile } from '../../statistics/normal-distribution';
import { requireProportion } from '../../statistics/require-proportion';
import type { LotPrior } from '../lot-model';
import { lotEvidence, type TestedLot } from './lot-evidence';
import { mostPlausiblePopulation } from './most-plausible-population';
import { PUBLISHED_COUNTS_AS_LOTS } from './published-as-lots';

/** Fewer lots than these say nothing of a crop. Our own choice. */
const FEWEST_LOTS = 3;
/** Ageing between two tests of a lot from which on they say something of its rate, probits: about two points at 90 %. */
export const LEAST_AGEING_BETWEEN_TESTS = 0.1;
/** Lots that differ more than this, probits and log rate, are no one crop in one bank: something is wrong with them. */
const MOST_INITIAL_SPREAD = 2;
const MOST_RATE_SPREAD = 1.5;

export interface LearntFigure {
  estimate: number;
  /** standard error of the estimate; of its logarithm for a spread */
  standardError: number;
  /** interval at the level asked for */
  lower: number;
  upper: number;
}

export interface LearntSpread {
  mean: LearntFigure;
  sd: LearntFigure;
}

/** What the suggestion rests on. */
export interface LearningGrounds {
  /** lots with at least one test */
  lots: number;
  tests: number;
  /** lots with two tests that at least 0.1 probits of ageing lie between */
  lotsTellingRate: number;
}

export type CropLearning = LearningGrounds &
  (
    | {
        ok: true;
        level: number;
        published: LotPrior;
        /** the suggested belief; its rate is the published one where that was not learnt */
        suggested: LotPrior;
        /** initial viability, probits */
        initial: LearntSpread;
        /** log of the rate relative to the published one; null: too few lots tell */
        logRate: LearntSpread | null;
      }
    | { ok: false; reason: 'too-few-lots' | 'lots-too-different' | 'did-not-converge' }
  );

/**
 * Learns a crop's typical initial viability and rate of ageing from its lots' tests.
 *
 * @param lots              of one crop, in any order; lots without tests are left out
 * @param published         what is believed without them (never what was learnt from them before)
 * @param publishedCountsAs how many lots that counts as, > 0; default 3
 * @param level             of the intervals, 0 < level < 1; default 0.9
 * @returns the suggested prior with intervals and what it rests on. With fewer than three lots that tell of the rate only
 *          the initial viability is learnt; with fewer than three lots, nothing
 * @throws RangeError when a figure is outside its range
 * @see docs/methods/bank-learning.md
 * Checked by simulation and through its parts: tests/domain/longevity/bank-learning/learn-crop-prior.test.ts
 */
export function learnCropPrior({
  lots,
  published,
  publishedCountsAs = PUBLISHED_COUNTS_AS_LOTS,
  level = 0.9,
}: {
  lots: readonly TestedLot[];
  published: LotPrior;
  publishedCountsAs?: number;
  level?: number;
}): CropLearning {
  requireProportion('learnCropPrior', 'level', level, true);
  const tested = lots.filter(({ tests }) => tests.length > 0);
  const grounds: LearningGrounds = {
    lots: tested.length,
    tests: tested.reduce((sum, { tests, testsMade = tests.length }) => sum + testsMade, 0),
    lotsTellingRate: tested.filter(tellsRate).length,
  };
  if (tested.length < FEWEST_LOTS) return { ok: false, reason: 'too-few-lots', ...grounds };
  const learnRate = grounds.lotsTellingRate >= FEWEST_LOTS;
  const evidence = tested.map(lotEvidence);
  const found = mostPlausiblePopulation({ evidence, published, publishedCountsAs, learnRate });
  if (!found.ok) return { ok: false, reason: found.reason, ...grounds };
  const { initial, logRate } = found.population;
  if (initial.sd > MOST_INITIAL_SPREAD || logRate.sd > Math.max(MOST_RATE_SPREAD, published.logRate.sd)) {
    return { ok: false, reason: 'lots-too-different', ...grounds };
  }
  const quantile = normalQuantile(0.5 * (1 + level));
  const spread = ({ mean, sd }: { mean: number; sd: number }, at: 0 | 2): LearntSpread => {
    const error = (index: number) => Math.sqrt((found.covariance[index] as number[])[index] as number);
    const [ofMean, ofLogSd] = [error(at), error(at + 1)];
    return {
      mean: {
        estimate: mean,
        standardError: ofMean,
        lower: mean - quantile * ofMean,
        upper: mean + quantile * ofMean,
      },
      sd: {
        estimate: sd,
        standardError: ofLogSd,
        lower: sd * Math.exp(-quantile * ofLogSd),
        upper: sd * Math.exp(quantile * ofLogSd),
      },
    };
  };
  return {
    ok: true,
    ...grounds,
    level,
    published,
    suggested: { initial, logRate: learnRate ? logRate : published.logRate },
    initial: spread(initial, 0),
    logRate: learnRate ? spread(logRate, 2) : null,
  };
}

/**
 * A learnt figure of the initial viability as people say it: the typical lot's share alive.
 *
 * @param figure  mean of K, probits
 * @returns proportions
 * Checked in tests/domain/longevity/bank-learning/learn-crop-prior.test.ts
 */
export function asViability({ estimate, lower, upper }: LearntFigure): {
  estimate: number;
  lower: number;
  upper: number;
} {
  return { estimate: normalCdf(estimate), lower: normalCdf(lower), upper: normalCdf(upper) };
}

/**
 * A learnt log rate as people say it: how many times as fast as published.
 *
 * @param figure  mean of the log rate
 * @returns factors, 1 as published
 * Checked in tests/domain/longevity/bank-learning/learn-crop-prior.test.ts
 */
export function asTimesAsFast({ estimate, lower, upper }: LearntFigure): {
  estimate: number;
  lower: number;
  upper: number;
} {
  return { estimate: Math.exp(estimate), lower: Math.exp(lower), upper: Math.exp(upper) };
}

function tellsRate({ tests }: TestedLot): boolean {
  const ageings = tests.map(({ probitsLost }) => probitsLost);
  return Math.max(...ageings) - Math.min(...ageings) >= LEAST_AGEING_BETWEEN_TESTS;
}
