/**
 * The lot model: a lot's germination tests and the viability equation, combined.
 *
 * Time is measured in ageing D, the probits that the published equation says were lost in the lot's actual storage.
 * Viability is Phi(K - exp(b) D): K the lot's initial viability (probits), exp(b) how fast it ages relative to the
 * published rate. Both have a normal prior; each test multiplies in a binomial likelihood, or a beta-binomial one
 * where the seeds of a test resemble each other. The posterior is integrated numerically (no sampling, no normal
 * approximation), so that it holds with no test, with none or all germinated, and with tests that contradict
 * each other: every proportion and chance is within 0.003 of a dense-grid integration.
 */
import { normalCdf, normalQuantile } from '../statistics/normal-distribution';
import { requireProportion } from '../statistics/require-proportion';
import { chanceBelowProbit, type PosteriorShape } from './chance-below-probit';
import {
  CAREFUL_SIDE_INTERVALS,
  FEWEST_SIDE_INTERVALS,
  type LotProblem,
  MOST_SIDE_INTERVALS,
} from './initial-viability-given-rate';
import { tabulateLikelyRates } from './likely-rates';
import { probitQuantile } from './probit-quantile';
import { cutRateCells } from './rate-cells';
import { TestLikelihood } from './test-likelihood';

/** A germination test of the lot. */
export type LotTest = {
  /** published ageing up to the day of the test, probits, >= 0 */
  probitsLost: number;
  /** seeds alive, whole, 0 <= germinated <= sown */
  germinated: number;
  /** seeds sown, whole, >= 1 */
  sown: number;
};

/** What is believed before any test. */
export type LotPrior = {
  /** initial viability, probits */
  initial: { mean: number; sd: number };
  /** natural logarithm of the lot's rate of ageing relative to the published rate */
  logRate: { mean: number; sd: number };
};

/** The lot's initial viability and rate of ageing as far as they are known. Read it with the functions beside it. */
export type LotPosterior = { prior: LotPrior; tests: readonly LotTest[] } & PosteriorShape;

const REACH_IN_SD = 5.3; // how far a table of K reaches under a normal prior
const WIDEST_INTERVAL = 0.55; // probits
const CAREFUL_WIDEST_INTERVAL = 0.33;
const WIDE_PRIOR_SD = 1.2;
const MOST_PROBITS_LOST = 1e9; // beyond this every seed is dead at any rate a prior can mean

/**
 * Combines a lot's tests with what was believed before.
 *
 * @param tests                     any number of tests, none too, in any order
 * @param prior                     normal priors: means within +-50, 0 < sd <= 10
 * @param intraReplicateCorrelation rho, 0 <= rho < 1: how alike seeds of one test are; 0 is binomial
 * @returns the posterior
 * @throws RangeError when an argument is outside its range
 * @see docs/methods/lot-model.md
 * Checked against dense-grid integration, R (tests/golden/lot-model.json) and probit regression:
 * tests/domain/longevity/lot-model.test.ts
 */
export function fitLot({
  tests,
  prior,
  intraReplicateCorrelation = 0,
}: {
  tests: readonly LotTest[];
  prior: LotPrior;
  intraReplicateCorrelation?: number;
}): LotPosterior {
  if (!(intraReplicateCorrelation >= 0 && intraReplicateCorrelation < 1)) {
    throw new RangeError(`fitLot: intraReplicateCorrelation must be in [0, 1), got ${intraReplicateCorrelation}`);
  }
  requirePrior('initial', prior.initial);
  requirePrior('logRate', prior.logRate);
  for (const test of tests) requireTest(test);
  const likelihoods = likelihoodsOf(tests, intraReplicateCorrelation);
  const careful = prior.initial.sd > WIDE_PRIOR_SD || prior.logRate.sd > WIDE_PRIOR_SD;
  const problem: LotProblem = {
    likelihoods,
    initialMean: prior.initial.mean,
    initialPrecision: 1 / (prior.initial.sd * prior.initial.sd),
    logRateMean: prior.logRate.mean,
    logRatePrecision: 1 / (prior.logRate.sd * prior.logRate.sd),
    sideIntervals: sideIntervalsFor(likelihoods, prior.initial.sd, careful),
    careful,
  };
  const { numbers, knotsAt } = cutRateCells(tabulateLikelyRates(problem));
  return { prior, tests, numbers, knotsAt, sideIntervals: problem.sideIntervals };
}

/**
 * The lot's viability after some published ageing: median and band.
 *
 * @param posterior    from `fitLot`
 * @param probitsLost  published ageing D, probits, >= 0
 * @param level        probability inside the band, 0 < level < 1; default 0.9
 * @returns proportions in [0, 1], lower <= median <= upper; as much probability lies below lower as above upper
 * @throws RangeError when an argument is outside its range
 * Checked against dense-grid integration and R: tests/domain/longevity/lot-model.test.ts
 */
export function viabilityAt(
  posterior: LotPosterior,
  { probitsLost, level = 0.9 }: { probitsLost: number; level?: number },
): { median: number; lower: number; upper: number } {
  requireProportion('viabilityAt', 'level', level, true);
  const lost = requireProbitsLost('viabilityAt', probitsLost);
  const lowerChance = 0.5 * (1 - level);
  const median = probitQuantile(posterior, lost, 0.5);
  const lower = Math.min(median, probitQuantile(posterior, lost, lowerChance));
  const upper = Math.max(median, probitQuantile(posterior, lost, 1 - lowerChance));
  return { median: normalCdf(median), lower: normalCdf(lower), upper: normalCdf(upper) };
}

/**
 * The median alone of the lot's viability after some published ageing: a third of the work of `viabilityAt`.
 *
 * @param posterior    from `fitLot`
 * @param probitsLost  published ageing D, probits, >= 0
 * @returns proportion in [0, 1]
 * @throws RangeError when probitsLost is outside its range
 * Checked against `viabilityAt`: tests/domain/longevity/lot-model.test.ts
 */
export function medianViability(posterior: LotPosterior, { probitsLost }: { probitsLost: number }): number {
  return normalCdf(probitQuantile(posterior, requireProbitsLost('medianViability', probitsLost), 0.5));
}

/**
 * The chance that the lot's viability is below a threshold after some published ageing.
 *
 * @param posterior    from `fitLot`
 * @param probitsLost  published ageing D, probits, >= 0
 * @param threshold    a viability, proportion, 0 < threshold < 1
 * @returns chance in [0, 1]
 * @throws RangeError when an argument is outside its range
 * Checked against dense-grid integration and R: tests/domain/longevity/lot-model.test.ts
 */
export function probabilityBelow(
  posterior: LotPosterior,
  { probitsLost, threshold }: { probitsLost: number; threshold: number },
): number {
  requireProportion('probabilityBelow', 'threshold', threshold, true);
  return chanceBelowProbit(posterior, requireProbitsLost('probabilityBelow', probitsLost), normalQuantile(threshold));
}

/**
 * A test in which all seeds grew, or none, cuts the prior of K off at a cliff less than a probit wide, which under a
 * wide prior needs more points than a hump does. The cliff is spread over three intervals at least.
 */
function sideIntervalsFor(likelihoods: readonly TestLikelihood[], initialSd: number, careful: boolean): number {
  const oneSided = likelihoods.some(({ germinated, sown }) => germinated === 0 || germinated === sown);
  const fewest = careful ? CAREFUL_SIDE_INTERVALS : FEWEST_SIDE_INTERVALS;
  if (!oneSided) return fewest;
  const needed = Math.ceil((REACH_IN_SD * initialSd) / (careful ? CAREFUL_WIDEST_INTERVAL : WIDEST_INTERVAL));
  return Math.min(MOST_SIDE_INTERVALS, Math.max(fewest, needed));
}

/** Tests of equal ageing are one binomial test; with correlation each test keeps its own likeness. */
function likelihoodsOf(tests: readonly LotTest[], correlation: number): TestLikelihood[] {
  if (correlation > 0) {
    return tests.map(
      (test, i) => new TestLikelihood(i, clampLost(test.probitsLost), test.germinated, test.sown, correlation),
    );
  }
  const merged = new Map<number, { germinated: number; sown: number }>();
  for (const { probitsLost, germinated, sown } of tests) {
    const lost = clampLost(probitsLost);
    const known = merged.get(lost);
    if (known) {
      known.germinated += germinated;
      known.sown += sown;
    } else merged.set(lost, { germinated, sown });
  }
  return [...merged].map(([lost, { germinated, sown }], i) => new TestLikelihood(i, lost, germinated, sown, 0));
}

const clampLost = (probitsLost: number): number => Math.min(probitsLost, MOST_PROBITS_LOST);

function requireProbitsLost(caller: string, probitsLost: number): number {
  if (!(probitsLost >= 0 && Number.isFinite(probitsLost))) {
    throw new RangeError(`${caller}: probitsLost must be finite and not negative, got ${probitsLost}`);
  }
  return clampLost(probitsLost);
}

function requireTest({ probitsLost, germinated, sown }: LotTest): void {
  requireProbitsLost('fitLot', probitsLost);
  if (!(Number.isInteger(sown) && sown >= 1)) {
    throw new RangeError(`fitLot: sown must be a whole number of at least 1, got ${sown}`);
  }
  if (!(Number.isInteger(germinated) && germinated >= 0 && germinated <= sown)) {
    throw new RangeError(`fitLot: germinated must be a whole number from 0 to sown (${sown}), got ${germinated}`);
  }
}

function requirePrior(name: string, { mean, sd }: { mean: number; sd: number }): void {
  if (!(Math.abs(mean) <= 50)) throw new RangeError(`fitLot: prior.${name}.mean must be within +-50, got ${mean}`);
  if (!(sd > 0 && sd <= 10)) throw new RangeError(`fitLot: prior.${name}.sd must be above 0 and at most 10, got ${sd}`);
}
