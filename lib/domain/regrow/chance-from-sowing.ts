/**
 * The chance that a sowing raises the plants wanted from a lot whose viability is uncertain.
 *
 * Two things can go wrong: the lot may be worse than thought, and the seeds of a sowing may be unlucky. Each is close to a
 * normal deviate: g, the probit of the chance that viability is below some value, and c, the probit of raising the plants at
 * that value. Over all values (g, c) runs along a curve that parts the plane of the two deviates into failure and success,
 * and the chance of success is the weight of a plane normal distribution on one side. Were the curve straight it would be
 * Phi of its distance from the origin. It nearly is, so a Gauss-Hermite sum of a few points ALONG the curve is enough,
 * however much wider one of the two is than the other. (Engineers call it the first-order reliability method, corrected.)
 */
import { chanceAndSlopes, roughProbit } from '../longevity/chance-below-probit';
import { fastLogCdf } from '../longevity/fast-log-cdf';
import { fastProbit } from '../longevity/fast-probit';
import type { LotPosterior } from '../longevity/lot-model';
import { normalCdf } from '../statistics/normal-distribution';
import { probitOfRaising } from './probit-of-raising';

/** A lot at a day: from which posterior, how aged, and how many of its living seeds come up. */
export interface LotAtSowing {
  posterior: LotPosterior;
  /** published ageing at sowing, probits, >= 0 */
  probitsLost: number;
  /** chance that a living seed becomes a plant, in (0, 1] */
  emergence: number;
}

/** Nodes and weights of Gauss-Hermite quadrature for a standard normal deviate. */
interface Rule {
  nodes: readonly number[];
  weights: readonly number[];
}
const FIVE: Rule = {
  nodes: [-2.856_970_013_872_806, -1.355_626_179_974_266, 0, 1.355_626_179_974_266, 2.856_970_013_872_806],
  weights: [
    0.011_257_411_327_721, 0.222_075_922_005_613, 0.533_333_333_333_333, 0.222_075_922_005_613, 0.011_257_411_327_721,
  ],
};
const NINE: Rule = {
  nodes: [
    -4.512_745_863_399_783, -3.205_429_002_856_47, -2.076_847_978_677_83, -1.023_255_663_789_133, 0,
    1.023_255_663_789_133, 2.076_847_978_677_83, 3.205_429_002_856_47, 4.512_745_863_399_783,
  ],
  weights: [
    0.000_022_345_844_008, 0.002_789_141_321_232, 0.049_916_406_765_218, 0.244_097_502_894_939, 0.406_349_206_349_206,
    0.244_097_502_894_939, 0.049_916_406_765_218, 0.002_789_141_321_232, 0.000_022_345_844_008,
  ],
};
/** For so few plants c hardly grows any more with viability, the curve bends, and nine points are taken. */
const FEW_PLANTS = 8;
const ruleFor = (plants: number): Rule => (plants < FEW_PLANTS ? NINE : FIVE);

/** A curve as far from the origin as this has about so much on its other side. */
const FAR = 3.9;
const LEFT_OVER = 0.5e-4;
/** How much flatter than a normal curve of the rough spread g is taken to be at most. */
const FLATTEST = 0.1;
/** Viabilities beyond these probits are not told apart from 0 or 1. */
const WIDEST_PROBIT = 9;
const LEAST_CHANCE = 1e-12;
const LEAST_DOUBLE = 1e-300;
/** Probits between the two values from which the slope of c is taken. */
const SLOPE_STEP = 0.02;
/** In units of the curve's own length: how near to its foot the middle point must lie. */
const FOOT_TOLERANCE = 0.3;
const MOST_FOOT_STEPS = 12;
/** Beyond the outermost points the curve is followed straight, but not by more than this. */
const FARTHEST_GUESS = 2;
const SQRT_TWO_PI = Math.sqrt(2 * Math.PI);

const answer = new Float64Array(3);
/** The curve traced last: probit viabilities looked at, g and its slope there. Its values for one sowing follow below. */
const MOST_POINTS = NINE.nodes.length;
const viabilities = new Float64Array(MOST_POINTS);
const g = new Float64Array(MOST_POINTS);
const gSlope = new Float64Array(MOST_POINTS);
const gInLost = new Float64Array(MOST_POINTS); // how fast g grows with ageing
const along = new Float64Array(MOST_POINTS);
const across = new Float64Array(MOST_POINTS);
const slopes = new Float64Array(MOST_POINTS);

/** Chances per seed, of coming up and of not, at each point and a slope step above it. */
const chancesAt = new Float64Array(4 * MOST_POINTS);
const chances = new Float64Array(2);

function chancePerSeed(emergence: number, viabilityProbit: number): void {
  chances[0] = Math.max(emergence * Math.exp(fastLogCdf(viabilityProbit)), LEAST_DOUBLE);
  chances[1] = 1 - emergence + emergence * Math.max(Math.exp(fastLogCdf(-viabilityProbit)), LEAST_DOUBLE);
}

function probitAt(emergence: number, plants: number, seeds: number, viabilityProbit: number): number {
  chancePerSeed(emergence, viabilityProbit);
  return probitOfRaising(plants, seeds, chances[0] as number, chances[1] as number);
}

/** Looks at the posterior once, for point i. */
function lookAt({ posterior, probitsLost }: LotAtSowing, viabilityProbit: number, i: number): void {
  const viability = Math.max(-WIDEST_PROBIT, Math.min(WIDEST_PROBIT, viabilityProbit));
  chanceAndSlopes(posterior, probitsLost, viability, answer);
  const probit = fastProbit(Math.min(1 - LEAST_CHANCE, Math.max(LEAST_CHANCE, answer[0] as number)));
  viabilities[i] = viability;
  g[i] = probit;
  const perDensity = SQRT_TWO_PI * Math.exp(0.5 * probit * probit);
  gSlope[i] = (answer[1] as number) * perDensity;
  gInLost[i] = (answer[2] as number) * perDensity;
}

/**
 * Traces the curve for a sowing: finds its foot, the point nearest to the origin, and looks at the points around it.
 *
 * @param lot     posterior, ageing and emergence
 * @param plants  integer >= 1
 * @param seeds   >= plants; need not be whole
 * @returns the chance of raising the plants where it is as good as settled without looking further; null where
 *          `chanceAlongCurve` gives it, until the next curve is traced
 * Checked through `chanceFromSowing`
 */
export function traceCurve(lot: LotAtSowing, plants: number, seeds: number): number | null {
  const { emergence } = lot;
  const { mean, sd } = roughProbit(lot.posterior, lot.probitsLost, WIDEST_PROBIT);
  const enough = plants / seeds / emergence; // viability that raises just the plants wanted
  const middle = enough < 0.998 ? Math.max(-WIDEST_PROBIT, fastProbit(enough)) : 2.9;
  // The foot lies between where c is 0 and where g is.
  let low = Math.max(-WIDEST_PROBIT, Math.min(middle - 1, mean - sd));
  let high = Math.min(WIDEST_PROBIT, Math.max(middle + 1, mean + sd));
  const rise = probitAt(emergence, plants, seeds, middle + SLOPE_STEP) - probitAt(emergence, plants, seeds, middle);
  const firmness = (sd * rise * sd * rise) / (SLOPE_STEP * SLOPE_STEP);
  let at = (mean + firmness * middle) / (1 + firmness);
  let unit = 1;
  for (let step = 0; step < MOST_FOOT_STEPS; step += 1) {
    lookAt(lot, at, 0);
    const here = g[0] as number;
    const c = probitAt(emergence, plants, seeds, at);
    if (here < -FAR && c > FAR) return 1;
    if (here > FAR && c < -FAR) return 0;
    const cSlope = (probitAt(emergence, plants, seeds, at + SLOPE_STEP) - c) / SLOPE_STEP;
    // Where the posterior ends its chance is flat, and its own rough spread must do.
    const slope = Math.max(gSlope[0] as number, FLATTEST / sd);
    const square = slope * slope + cSlope * cSlope;
    unit = 1 / Math.sqrt(square);
    const away = -(here * slope + c * cSlope) / square;
    if (Math.abs(away) < FOOT_TOLERANCE * unit || step === MOST_FOOT_STEPS - 1) {
      if (here * here + c * c > FAR * FAR) return c * slope > here * cSlope ? 1 - LEFT_OVER : LEFT_OVER;
      at += Math.max(-unit, Math.min(unit, away));
      break;
    }
    if (away > 0) low = at;
    else high = at;
    at = at + away > low && at + away < high ? at + away : 0.5 * (low + high);
  }
  const { nodes } = ruleFor(plants);
  for (let i = 0; i < nodes.length; i += 1) {
    lookAt(lot, at + (nodes[i] as number) * unit, i);
    chancePerSeed(emergence, viabilities[i] as number);
    chancesAt[4 * i] = chances[0] as number;
    chancesAt[4 * i + 1] = chances[1] as number;
    chancePerSeed(emergence, (viabilities[i] as number) + SLOPE_STEP);
    chancesAt[4 * i + 2] = chances[0] as number;
    chancesAt[4 * i + 3] = chances[1] as number;
  }
  return null;
}

/** What else `chanceAlongCurve` found, handed back without an allocation. */
export const foundAlong = {
  /** how far the foot lies from where the curve was traced, in its own length: beyond 1 it should be traced anew */
  drift: 0.5,
  /** how fast the chance falls with ageing, per probit; good to some per cent */
  lossPerProbit: 0.5,
};

/**
 * The chance of raising the plants from a number of seeds, along the curve that was traced for about as many.
 *
 * @param plants     as it was traced
 * @param seeds      >= plants; need not be whole
 * @returns probability in [0, 1]; more of it in `foundAlong`
 * Checked through `chanceFromSowing`
 */
export function chanceAlongCurve(plants: number, seeds: number): number {
  const { nodes, weights } = ruleFor(plants);
  const middle = (nodes.length - 1) / 2;
  let tilt = 0;
  for (let i = 0; i < nodes.length; i += 1) {
    const at = 4 * i;
    const c = probitOfRaising(plants, seeds, chancesAt[at] as number, chancesAt[at + 1] as number);
    const above = probitOfRaising(plants, seeds, chancesAt[at + 2] as number, chancesAt[at + 3] as number);
    across[i] = c;
    slopes[i] = (above - c) / SLOPE_STEP;
    if (i === middle) tilt = (slopes[i] as number) / Math.max(gSlope[i] as number, 1e-9);
  }
  const perLength = 1 / Math.sqrt(1 + tilt * tilt);
  for (let i = 0; i < nodes.length; i += 1) {
    const c = across[i] as number;
    const cSlope = slopes[i] as number;
    const speed = (gSlope[i] as number) + tilt * cSlope;
    along[i] = ((g[i] as number) + tilt * c) * perLength;
    across[i] = (c - tilt * (g[i] as number)) * perLength;
    slopes[i] = speed > 0 ? (cSlope - tilt * (gSlope[i] as number)) / speed : 0;
  }
  foundAlong.drift = Math.abs(along[middle] as number);
  let chance = 0;
  let loss = 0;
  for (let i = 0; i < nodes.length; i += 1) {
    const weight = weights[i] as number;
    const distance = acrossAt(nodes[i] as number, nodes.length - 1);
    chance += weight * normalCdf(distance);
    const fall = (tilt + (slopes[i] as number)) * perLength * (gInLost[i] as number);
    loss += (weight * fall * Math.exp(-0.5 * distance * distance)) / SQRT_TWO_PI;
  }
  foundAlong.lossPerProbit = loss;
  return Math.min(1, chance);
}

/** How far across the curve lies at a place along it: the points looked at are not quite at the nodes. */
function acrossAt(place: number, last: number): number {
  let i = 0;
  while (i < last && (along[i + 1] as number) < place) i += 1;
  const width = (along[i + 1] as number) - (along[i] as number);
  if (place <= (along[0] as number) || i === last || !(width > 0)) {
    const shift = (slopes[i] as number) * (place - (along[i] as number));
    return (across[i] as number) + Math.max(-FARTHEST_GUESS, Math.min(FARTHEST_GUESS, shift));
  }
  const t = (place - (along[i] as number)) / width;
  const rise = (across[i + 1] as number) - (across[i] as number);
  const d0 = (slopes[i] as number) * width;
  const d1 = (slopes[i + 1] as number) * width;
  return (across[i] as number) + t * (d0 + t * (3 * rise - 2 * d0 - d1 + t * (d0 + d1 - 2 * rise)));
}

/**
 * Chance of raising at least `plants` plants from `seeds` seeds.
 *
 * @param lot     posterior, ageing and emergence
 * @param plants  integer >= 1
 * @param seeds   integer >= 0
 * @returns probability in [0, 1], within 0.003 of dense integration; 0 with fewer seeds than plants
 * Checked against dense integration: tests/domain/regrow/seeds-to-sow-uncertain.test.ts
 */
export function chanceFromSowing(lot: LotAtSowing, plants: number, seeds: number): number {
  if (seeds < plants) return 0;
  return traceCurve(lot, plants, seeds) ?? chanceAlongCurve(plants, seeds);
}
