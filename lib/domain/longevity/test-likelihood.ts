/**
 * The log-likelihood of one germination test as a function of the lot's probit viability on the day of the test:
 * binomial, or beta-binomial when seeds of one test resemble each other more than seeds of the lot do.
 *
 * It is tabulated at knots 1/16 apart, filled as they are first met, and read by a cubic that matches value and slope
 * at both knots (error below 1e-5 at 400 seeds). One likelihood serves every rate and initial viability that the
 * lot model tries, so a knot is paid for once.
 */
import { fastLogCdf, fastLogCdfSlope } from './fast-log-cdf';
import { logRisingFactorialAboveFirst } from './rising-factorial';

const REACH = 10;
const KNOTS_PER_PROBIT = 16;
const KNOTS = 2 * REACH * KNOTS_PER_PROBIT + 1;
const STEP = 1 / KNOTS_PER_PROBIT;
// Below this correlation a beta-binomial is a binomial to within n^2 rho, while log Gamma starts to lose digits.
const LEAST_CORRELATION = 1e-9;

const valuesOfSlot: Float64Array[] = [];
const slopesOfSlot: Float64Array[] = [];

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
   * @param slot  number of the test within its lot, from 0: a test's table is working space that the test with the same
   *              number in the next lot takes over, so a likelihood is good only until the next lot is begun
   */
  constructor(slot: number, probitsLost: number, germinated: number, sown: number, correlation: number) {
    this.values = valuesOfSlot[slot] ??= new Float64Array(KNOTS);
    this.slopes = slopesOfSlot[slot] ??= new Float64Array(KNOTS);
    this.values.fill(Number.NaN);
    this.probitsLost = probitsLost;
    this.germinated = germinated;
    this.sown = sown;
    this.dead = sown - germinated;
    this.concentration = correlation < LEAST_CORRELATION ? Number.POSITIVE_INFINITY : (1 - correlation) / correlation;
  }

  /** Adds log-likelihood, slope and curvature at a viability (probits) to sum[0], sum[1], sum[2]. */
  addAt(probit: number, sum: Float64Array): void {
    if (!(probit > -REACH && probit < REACH)) {
      this.exact(probit, pair);
      const slope = pair[1] as number;
      sum[0] = (sum[0] as number) + (pair[0] as number);
      sum[1] = (sum[1] as number) + slope;
      // A difference will do for the curvature out here: it only steers a search.
      this.exact(probit + STEP, pair);
      sum[2] = (sum[2] as number) + ((pair[1] as number) - slope) * KNOTS_PER_PROBIT;
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
    sum[0] = (sum[0] as number) + y0 + t * (d0 + t * (square + t * cube));
    sum[1] = (sum[1] as number) + (d0 + t * (2 * square + 3 * t * cube)) * KNOTS_PER_PROBIT;
    sum[2] = (sum[2] as number) + (2 * square + 6 * t * cube) * KNOTS_PER_PROBIT * KNOTS_PER_PROBIT;
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
    const { values, slopes: knotSlopes, probitsLost } = this;
    for (let j = 0; j < count; j += 1) {
      const probit = from + j * spacing;
      let log: number;
      let slope: number;
      if (probit > -REACH && probit < REACH) {
        const position = (probit + REACH) * KNOTS_PER_PROBIT;
        const i = position | 0;
        const t = position - i;
        this.fill(i);
        const y0 = values[i] as number;
        const d0 = (knotSlopes[i] as number) * STEP;
        const d1 = (knotSlopes[i + 1] as number) * STEP;
        const rise = (values[i + 1] as number) - y0;
        const square = 3 * rise - 2 * d0 - d1;
        const cube = d0 + d1 - 2 * rise;
        log = y0 + t * (d0 + t * (square + t * cube));
        slope = (d0 + t * (2 * square + 3 * t * cube)) * KNOTS_PER_PROBIT;
      } else {
        this.exact(probit, pair);
        log = pair[0] as number;
        slope = pair[1] as number;
      }
      logs[at + j] = (logs[at + j] as number) + log;
      slopes[at + j] = (slopes[at + j] as number) + slope;
      slopesTimesLost[at + j] = (slopesTimesLost[at + j] as number) + slope * probitsLost;
    }
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
