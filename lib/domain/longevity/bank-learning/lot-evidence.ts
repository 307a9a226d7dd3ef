/**
 * What one lot's tests say of its initial viability K and its rate of ageing exp(b), as a table: the likelihood of the
 * tests on a lattice of (K, b), relative to its highest point.
 *
 * The table does not depend on what is believed of the crop. So it is made once, and every crop-wide belief that is
 * tried afterwards costs a multiplication per point (population-likelihood.ts). Sums over an even lattice are exact to
 * many digits as long as its step is no wider than the narrowest hump (the error of the trapezoid rule falls as
 * exp(-2 (pi width / step)^2)), so the steps are halved until they are.
 */
import { fastLogCdf } from '../fast-log-cdf';
import type { LotTest } from '../lot-model';
import { logRisingFactorialAboveFirst } from '../rising-factorial';
import { BASE_STEP, FINEST_LEVEL, INITIAL_FROM, INITIAL_TO, LEAST_SPREAD } from './lattice';
import { CUT, chooseRows, climb, PULL_LOG_RATE, pulledHeight, type RateRow } from './rate-rows';

/** One lot's tests, with how alike the seeds of one test are. */
export interface TestedLot {
  tests: readonly LotTest[];
  /** rho, 0 <= rho < 1; default 0: binomial */
  intraReplicateCorrelation?: number;
  /** how many tests these counts come from, where each dish counts by itself; default: as many as there are counts */
  testsMade?: number;
}

export interface LotEvidence {
  initialLevel: number;
  rateLevel: number;
  /** whether any test came after some ageing: otherwise there is one row, good for every rate */
  rateMatters: boolean;
  /** place of the first row on the lattice of log rates */
  firstRate: number;
  /** place of each row's first number on the lattice of K */
  firstInitial: Int32Array;
  /** where each row's numbers begin, and where the last row's end */
  rowAt: Int32Array;
  /** likelihoods relative to `logTop` */
  numbers: Float64Array;
  logTop: number;
}

const MOST_INFORMATION = 2 / Math.PI; // of one seed about its lot's probit, at half alive
const LEAST_CORRELATION = 1e-9;
const MOST_PROBITS_LOST = 1e9;
// A gentle pull towards the middle, so that a lot of which every seed grew does not have its top at infinity. It only
// chooses what is tabulated; it is not part of the numbers.
const PULL_MIDDLE = 1.75;
const PULL_INITIAL = 1 / (2 * 2.5 ** 2);

const pair = new Float64Array(2);

/** @returns log-likelihood of the tests at K and a rate, up to a constant that depends on neither */
function logLikelihood(tests: readonly LotTest[], concentration: number, initial: number, rate: number): number {
  const logConcentration = Math.log(concentration);
  let sum = 0;
  for (const { probitsLost, germinated, sown } of tests) {
    const probit = initial - rate * probitsLost;
    const logAlive = fastLogCdf(probit);
    const logDead = fastLogCdf(-probit);
    const dead = sown - germinated;
    if (concentration === Number.POSITIVE_INFINITY) {
      sum += germinated * logAlive + dead * logDead;
      continue;
    }
    if (germinated > 0) {
      logRisingFactorialAboveFirst(concentration * Math.exp(logAlive), germinated, pair);
      sum += logConcentration + logAlive + (pair[0] as number);
    }
    if (dead > 0) {
      logRisingFactorialAboveFirst(concentration * Math.exp(logDead), dead, pair);
      sum += logConcentration + logDead + (pair[0] as number);
    }
  }
  return sum;
}

/**
 * Tabulates a lot's tests.
 *
 * @param lot  at least one test; probitsLost >= 0, whole 0 <= germinated <= sown, sown >= 1; rho in [0, 1)
 * @returns the likelihood over K from -9 to 12 probits and log rate from -8 to 8, where it matters
 * @throws RangeError when there is no test, or a figure is outside its range
 * Checked through the marginal likelihood: tests/domain/longevity/bank-learning/population-likelihood.test.ts
 */
export function lotEvidence({ tests, intraReplicateCorrelation = 0 }: TestedLot): LotEvidence {
  requireLot(tests, intraReplicateCorrelation);
  const concentration =
    intraReplicateCorrelation < LEAST_CORRELATION
      ? Number.POSITIVE_INFINITY
      : (1 - intraReplicateCorrelation) / intraReplicateCorrelation;
  const merged = concentration === Number.POSITIVE_INFINITY ? mergeEqualAgeing(tests) : tests.map(clamped);
  const seeds = merged.reduce((sum, { sown }) => sum + sown, 0);
  const width = 1 / Math.sqrt(MOST_INFORMATION * seeds + 1 / LEAST_SPREAD ** 2);
  const initialLevel = Math.min(FINEST_LEVEL, Math.max(0, Math.ceil(Math.log2(BASE_STEP / width))));
  const step = BASE_STEP / 2 ** initialLevel;
  const last = Math.round((INITIAL_TO - INITIAL_FROM) / step);
  const heightAt = (rate: number) => (place: number) => {
    const initial = INITIAL_FROM + place * step;
    return logLikelihood(merged, concentration, initial, rate) - PULL_INITIAL * (initial - PULL_MIDDLE) ** 2;
  };
  if (merged.every(({ probitsLost }) => probitsLost === 0)) {
    const top = climb(heightAt(0), Math.round((PULL_MIDDLE - INITIAL_FROM) / step), last);
    return tabulate([{ logRate: 0, ...top }], { initialLevel, rateLevel: 0, rateMatters: false, firstRate: 0 });
  }
  const { rows, rateLevel, firstRate } = chooseRows(heightAt, last, Math.round((PULL_MIDDLE - INITIAL_FROM) / step));
  return tabulate(rows, { initialLevel, rateLevel, rateMatters: true, firstRate });

  function tabulate(
    chosen: readonly RateRow[],
    shape: Pick<LotEvidence, 'initialLevel' | 'rateLevel' | 'rateMatters' | 'firstRate'>,
  ): LotEvidence {
    const highest = Math.max(...chosen.map(pulledHeight));
    const firstInitial = new Int32Array(chosen.length);
    const rowAt = new Int32Array(chosen.length + 1);
    const logs: number[] = [];
    chosen.forEach((row, index) => {
      const rate = Math.exp(row.logRate);
      const height = heightAt(rate);
      const limit = highest - CUT + PULL_LOG_RATE * row.logRate ** 2;
      // A beta-binomial can have a second hump, which a walk from the top would not cross to.
      const whole = concentration !== Number.POSITIVE_INFINITY;
      let from = row.place;
      let to = row.place;
      if (whole) {
        from = 0;
        to = last;
        while (from < row.place && height(from) < limit) from += 1;
        while (to > row.place && height(to) < limit) to -= 1;
      } else {
        while (from > 0 && height(from - 1) >= limit) from -= 1;
        while (to < last && height(to + 1) >= limit) to += 1;
      }
      firstInitial[index] = from;
      for (let place = from; place <= to; place += 1) {
        logs.push(logLikelihood(merged, concentration, INITIAL_FROM + place * step, rate));
      }
      rowAt[index + 1] = logs.length;
    });
    let logTop = Number.NEGATIVE_INFINITY;
    for (const log of logs) logTop = Math.max(logTop, log);
    const numbers = Float64Array.from(logs, (log) => Math.exp(log - logTop));
    return { ...shape, firstInitial, rowAt, numbers, logTop };
  }
}

const clamped = (test: LotTest): LotTest => ({ ...test, probitsLost: Math.min(test.probitsLost, MOST_PROBITS_LOST) });

function mergeEqualAgeing(tests: readonly LotTest[]): LotTest[] {
  const merged = new Map<number, LotTest>();
  for (const test of tests.map(clamped)) {
    const known = merged.get(test.probitsLost);
    if (known) {
      known.germinated += test.germinated;
      known.sown += test.sown;
    } else merged.set(test.probitsLost, { ...test });
  }
  return [...merged.values()].sort((a, b) => a.probitsLost - b.probitsLost);
}

function requireLot(tests: readonly LotTest[], correlation: number): void {
  if (tests.length === 0) throw new RangeError('lotEvidence: a lot needs at least one test, got none');
  if (!(correlation >= 0 && correlation < 1)) {
    throw new RangeError(`lotEvidence: intraReplicateCorrelation must be in [0, 1), got ${correlation}`);
  }
  for (const { probitsLost, germinated, sown } of tests) {
    if (!(probitsLost >= 0 && Number.isFinite(probitsLost))) {
      throw new RangeError(`lotEvidence: probitsLost must be finite and not negative, got ${probitsLost}`);
    }
    if (!(Number.isInteger(sown) && sown >= 1)) {
      throw new RangeError(`lotEvidence: sown must be a whole number of at least 1, got ${sown}`);
    }
    if (!(Number.isInteger(germinated) && germinated >= 0 && germinated <= sown)) {
      throw new RangeError(
        `lotEvidence: germinated must be a whole number from 0 to sown (${sown}), got ${germinated}`,
      );
    }
  }
}
