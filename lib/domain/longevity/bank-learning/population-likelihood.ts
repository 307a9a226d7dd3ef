/**
 * How likely the tests of all a crop's lots are, if its lots' initial viabilities and log rates of ageing were spread as
 * some normal distribution says: each lot's likelihood is averaged over both (the marginal likelihood), and the lots'
 * logarithms add.
 */
import type { LotPrior } from '../lot-model';
import { BASE_STEP, FINEST_LEVEL, INITIAL_FROM, INITIAL_TO, LOG_RATE_FROM, LOG_RATE_TO } from './lattice';
import type { LotEvidence } from './lot-evidence';

/** Normal weights on one lattice, and the same times z and times z^2, z the distance from the mean in sd. */
interface Weights {
  plain: Float64Array;
  timesZ: Float64Array;
  timesSquare: Float64Array;
  step: number;
}

/** What a crop's lots say of a belief about it. */
export interface PopulationFit {
  /** log marginal likelihood of all tests, up to a constant that does not depend on the belief */
  logLikelihood: number;
  /** over lots, the sum of the expected z and of the expected z^2 of K, then of the log rate, given the lot's tests */
  initialZ: number;
  initialSquare: number;
  rateZ: number;
  rateSquare: number;
}

const NEGLIGIBLE = 1e-16;
const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

/**
 * The log marginal likelihood of a crop's tests under a belief about its lots, with what its slopes are made of.
 *
 * @param evidence    of each lot, from `lotEvidence`
 * @param population  mean within the lattice; sd at least 0.15, or the sums lose digits
 * @returns -Infinity as logLikelihood when some lot is out of all reach of the belief
 * @see docs/methods/bank-learning.md
 * Checked against a dense grid in R: tests/domain/longevity/bank-learning/population-likelihood.test.ts
 */
export function populationFit(evidence: readonly LotEvidence[], population: LotPrior): PopulationFit {
  const ofInitial = weightsByLevel(population.initial, INITIAL_FROM, INITIAL_TO);
  const ofRate = weightsByLevel(population.logRate, LOG_RATE_FROM, LOG_RATE_TO);
  const fit = { logLikelihood: 0, initialZ: 0, initialSquare: 0, rateZ: 0, rateSquare: 0 };
  for (const lot of evidence) addLot(fit, lot, ofInitial(lot.initialLevel), ofRate(lot.rateLevel));
  return fit;
}

function addLot(fit: PopulationFit, lot: LotEvidence, initial: Weights, rate: Weights): void {
  const { numbers, rowAt, firstInitial, firstRate, rateMatters } = lot;
  const rows = firstInitial.length;
  let total = 0;
  let initialZ = 0;
  let initialSquare = 0;
  let rateZ = 0;
  let rateSquare = 0;
  for (let row = 0; row < rows; row += 1) {
    const weight = rateMatters ? (rate.plain[firstRate + row] as number) : 1;
    if (weight < NEGLIGIBLE) continue;
    const end = rowAt[row + 1] as number;
    let place = firstInitial[row] as number;
    let plain = 0;
    let timesZ = 0;
    let timesSquare = 0;
    for (let at = rowAt[row] as number; at < end; at += 1) {
      const likelihood = numbers[at] as number;
      plain += likelihood * (initial.plain[place] as number);
      timesZ += likelihood * (initial.timesZ[place] as number);
      timesSquare += likelihood * (initial.timesSquare[place] as number);
      place += 1;
    }
    total += weight * plain;
    initialZ += weight * timesZ;
    initialSquare += weight * timesSquare;
    if (rateMatters) {
      rateZ += (rate.timesZ[firstRate + row] as number) * plain;
      rateSquare += (rate.timesSquare[firstRate + row] as number) * plain;
    }
  }
  if (!(total > 0)) {
    fit.logLikelihood = Number.NEGATIVE_INFINITY;
    return;
  }
  fit.logLikelihood += lot.logTop + Math.log(total * initial.step * (rateMatters ? rate.step : 1));
  fit.initialZ += initialZ / total;
  fit.initialSquare += initialSquare / total;
  // A lot tested only when fresh leaves its rate as it was believed: z of mean 0 and variance 1.
  fit.rateZ += rateMatters ? rateZ / total : 0;
  fit.rateSquare += rateMatters ? rateSquare / total : 1;
}

/** Weights on the lattice of any level, each made when first asked for. */
function weightsByLevel({ mean, sd }: { mean: number; sd: number }, from: number, to: number) {
  const known: (Weights | undefined)[] = new Array(FINEST_LEVEL + 1);
  return (level: number): Weights => {
    const made = known[level];
    if (made) return made;
    const step = BASE_STEP / 2 ** level;
    const points = Math.round((to - from) / step) + 1;
    const plain = new Float64Array(points);
    const timesZ = new Float64Array(points);
    const timesSquare = new Float64Array(points);
    for (let place = 0; place < points; place += 1) {
      const z = (from + place * step - mean) / sd;
      const weight = Math.exp(-0.5 * z * z) / (sd * ROOT_TWO_PI);
      plain[place] = weight;
      timesZ[place] = weight * z;
      timesSquare[place] = weight * z * z;
    }
    const weights = { plain, timesZ, timesSquare, step };
    known[level] = weights;
    return weights;
  };
}
