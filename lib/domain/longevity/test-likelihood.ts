/**
 * The log-likelihood of one germination test as a function of the lot's probit viability on the day of the test:
 * binomial, or beta-binomial when seeds of one test resemble each other more than seeds of the lot do.
 *
 * The binomial one is a weighted sum of two log tails of the normal curve, read at once from their shared table. The
 * beta-binomial one is tabulated at knots 1/16 apart, filled as they are first met, and read by a cubic that matches
 * value and slope at both knots (error below 1e-5 at 400 seeds): a knot is paid for once per test.
 */
import {
  fastLogCdf,
  fastLogCdfSlope,
  LOG_CDF_FROM,
  LOG_CDF_KNOTS_PER_PROBIT,
  LOG_CDF_LAST_KNOT,
  logCdfAtKnot,
  logCdfSlopeAtKnot,
} from './fast-log-cdf';
import { logRisingFactorialAboveFirst } from './rising-factorial';

// Copies, because a constant of another module can cost a call each time it is read.
const TAILS = logCdfAtKnot;
const TAIL_SLOPES = logCdfSlopeAtKnot;
const TAILS_REACH = -LOG_CDF_FROM;
const TAILS_PER_PROBIT = LOG_CDF_KNOTS_PER_PROBIT;
const TAILS_STEP = 1 / LOG_CDF_KNOTS_PER_PROBIT;
const TAILS_LAST = LOG_CDF_LAST_KNOT;

const REACH = 10;
const KNOTS_PER_PROBIT = 16;
const KNOTS = 2 * REACH * KNOTS_PER_PROBIT + 1;
const STEP = 1 / KNOTS_PER_PROBIT;
// Below this correlation a beta-binomial is a binomial to within n^2 rho, while log Gamma starts to lose digits.
const LEAST_CORRELATION = 1e-9;

const valuesOfSlot: Float64Array[] = [];
const slopesOfSlot: Float64Array[] = [];
const NO_TABLE = new Float64Array(0);

const pair = new Float64Array(2);

export class TestLikelihood {
  readonly probitsLost: number;
  readonly germinated: number;
  readonly sown: number;
  private readonly dead: number;
  /** (1 - rho) / rho, or Infinity for the binomial */
  private readonly concentration: number;
  private readonly values: Float64Array;
  private readonly slopes: Float64Array;

  /**
   * @param slot  number of the test within its lot, from 0: a beta-binomial test's table is working space that the test with
   *              the same number in the next lot takes over, so a likelihood is good only until the next lot is begun
   */
  constructor(slot: number, probitsLost: number, germinated: number, sown: number, correlation: number) {
    this.probitsLost = probitsLost;
    this.germinated = germinated;
    this.sown = sown;
    this.dead = sown - germinated;
    if (correlation < LEAST_CORRELATION) {
      this.concentration = Number.POSITIVE_INFINITY;
      this.values = NO_TABLE;
      this.slopes = NO_TABLE;
      return;
    }
    this.concentration = (1 - correlation) / correlation;
    this.values = valuesOfSlot[slot] ??= new Float64Array(KNOTS);
    this.slopes = slopesOfSlot[slot] ??= new Float64Array(KNOTS);
    this.values.fill(Number.NaN);
  }

  /** Adds log-likelihood, slope and curvature at the viability in sum[3] (probits) to sum[0], sum[1], sum[2]. */
  addAt(sum: Float64Array): void {
    const probit = sum[3] as number; // as an argument it would be boxed anew at each call
    const binomial = this.concentration === Number.POSITIVE_INFINITY;
    const reach = binomial ? TAILS_REACH : REACH;
    if (!(probit > -reach && probit < reach)) {
      this.exact(probit, pair);
      const slope = pair[1] as number;
      sum[0] = (sum[0] as number) + (pair[0] as number);
      sum[1] = (sum[1] as number) + slope;
      // A difference will do for the curvature out here: it only steers a search.
      this.exact(probit + STEP, pair);
      sum[2] = (sum[2] as number) + ((pair[1] as number) - slope) * KNOTS_PER_PROBIT;
      return;
    }
    let perProbit: number;
    let t: number;
    let y0: number;
    let d0: number;
    let d1: number;
    let rise: number;
    if (binomial) {
      const { germinated, dead } = this;
      perProbit = TAILS_PER_PROBIT;
      const position = (probit + TAILS_REACH) * TAILS_PER_PROBIT;
      const i = position | 0;
      const mirror = TAILS_LAST - i;
      t = position - i;
      y0 = germinated * (TAILS[i] as number) + dead * (TAILS[mirror] as number);
      rise = germinated * (TAILS[i + 1] as number) + dead * (TAILS[mirror - 1] as number) - y0;
      d0 = (germinated * (TAIL_SLOPES[i] as number) - dead * (TAIL_SLOPES[mirror] as number)) * TAILS_STEP;
      d1 = (germinated * (TAIL_SLOPES[i + 1] as number) - dead * (TAIL_SLOPES[mirror - 1] as number)) * TAILS_STEP;
    } else {
      perProbit = KNOTS_PER_PROBIT;
      const position = (probit + REACH) * KNOTS_PER_PROBIT;
      const i = position | 0;
      t = position - i;
      this.fill(i);
      y0 = this.values[i] as number;
      d0 = (this.slopes[i] as number) * STEP;
      d1 = (this.slopes[i + 1] as number) * STEP;
      rise = (this.values[i + 1] as number) - y0;
    }
    const square = 3 * rise - 2 * d0 - d1;
    const cube = d0 + d1 - 2 * rise;
    sum[0] = (sum[0] as number) + y0 + t * (d0 + t * (square + t * cube));
    sum[1] = (sum[1] as number) + (d0 + t * (2 * square + 3 * t * cube)) * perProbit;
    sum[2] = (sum[2] as number) + (2 * square + 6 * t * cube) * perProbit * perProbit;
  }

  /**
   * Adds log-likelihood, slope, and slope times probits lost, at `count` viabilities spaced `spacing` apart from
   * `from`, to the three arrays beginning at `at`.
   */
  addAlong(
    from: number,
    spacing: number,
    count: number,
    at: number,
    logs: Float64Array,
    slopes: Float64Array,
    slopesTimesLost: Float64Array,
  ): void {
    const { probitsLost } = this;
    const to = from + (count - 1) * spacing;
    if (this.concentration === Number.POSITIVE_INFINITY && from > -TAILS_REACH && to < TAILS_REACH) {
      const { germinated, dead } = this;
      for (let j = 0; j < count; j += 1) {
        const position = (from + j * spacing + TAILS_REACH) * TAILS_PER_PROBIT;
        const i = position | 0;
        const mirror = TAILS_LAST - i;
        const t = position - i;
        const y0 = germinated * (TAILS[i] as number) + dead * (TAILS[mirror] as number);
        const rise = germinated * (TAILS[i + 1] as number) + dead * (TAILS[mirror - 1] as number) - y0;
        const d0 = (germinated * (TAIL_SLOPES[i] as number) - dead * (TAIL_SLOPES[mirror] as number)) * TAILS_STEP;
        const d1 =
          (germinated * (TAIL_SLOPES[i + 1] as number) - dead * (TAIL_SLOPES[mirror - 1] as number)) * TAILS_STEP;
        const square = 3 * rise - 2 * d0 - d1;
        const cube = d0 + d1 - 2 * rise;
        const slope = (d0 + t * (2 * square + 3 * t * cube)) * TAILS_PER_PROBIT;
        logs[at + j] = (logs[at + j] as number) + y0 + t * (d0 + t * (square + t * cube));
        slopes[at + j] = (slopes[at + j] as number) + slope;
        slopesTimesLost[at + j] = (slopesTimesLost[at + j] as number) + slope * probitsLost;
      }
      return;
    }
    for (let j = 0; j < count; j += 1) {
      this.valueAndSlope(from + j * spacing, pair);
      const slope = pair[1] as number;
      logs[at + j] = (logs[at + j] as number) + (pair[0] as number);
      slopes[at + j] = (slopes[at + j] as number) + slope;
      slopesTimesLost[at + j] = (slopesTimesLost[at + j] as number) + slope * probitsLost;
    }
  }

  private valueAndSlope(probit: number, out: Float64Array): void {
    if (this.concentration === Number.POSITIVE_INFINITY || !(probit > -REACH && probit < REACH)) {
      this.exact(probit, out);
      return;
    }
    const position = (probit + REACH) * KNOTS_PER_PROBIT;
    const i = position | 0;
    const t = position - i;
    this.fill(i);
    const y0 = this.values[i] as number;
    const d0 = (this.slopes[i] as number) * STEP;
    const d1 = (this.slopes[i + 1] as number) * STEP;
    const rise = (this.values[i + 1] as number) - y0;
    const square = 3 * rise - 2 * d0 - d1;
    const cube = d0 + d1 - 2 * rise;
    out[0] = y0 + t * (d0 + t * (square + t * cube));
    out[1] = (d0 + t * (2 * square + 3 * t * cube)) * KNOTS_PER_PROBIT;
  }

  private fill(i: number): void {
    for (let knot = i; knot <= i + 1; knot += 1) {
      const value = this.values[knot] as number;
      if (!Number.isNaN(value)) continue; // NaN marks a knot not yet met
      this.exact(knot * STEP - REACH, pair);
      this.values[knot] = pair[0] as number;
      this.slopes[knot] = pair[1] as number;
    }
  }

  /** Log-likelihood (up to a constant) and its slope, in out[0] and out[1]. */
  private exact(probit: number, out: Float64Array): void {
    const { germinated, dead, concentration } = this;
    const logAlive = fastLogCdf(probit);
    const logDead = fastLogCdf(-probit);
    const slopeAlive = fastLogCdfSlope(probit);
    const slopeDead = fastLogCdfSlope(-probit);
    if (concentration === Number.POSITIVE_INFINITY) {
      out[0] = germinated * logAlive + dead * logDead;
      out[1] = germinated * slopeAlive - dead * slopeDead;
      return;
    }
    // Beta-binomial: Gamma(a + s)/Gamma(a) x Gamma(b + f)/Gamma(b), a = c Phi, b = c (1 - Phi). The first factor of each
    // rising factorial, a or b itself, is taken from the exact logarithm, so that a = 1e-300 does no harm.
    const alive = Math.exp(logAlive);
    const density = slopeAlive * alive;
    let log = 0;
    let slope = 0;
    if (germinated > 0) {
      logRisingFactorialAboveFirst(concentration * alive, germinated, out);
      log += logAlive + (out[0] as number);
      slope += slopeAlive + concentration * density * (out[1] as number);
    }
    if (dead > 0) {
      logRisingFactorialAboveFirst(concentration * Math.exp(logDead), dead, out);
      log += logDead + (out[0] as number);
      slope -= slopeDead + concentration * density * (out[1] as number);
    }
    out[0] = log;
    out[1] = slope;
  }
}
