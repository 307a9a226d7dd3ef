/**
 * What a seed's chance of becoming a plant may be (viability times emergence), as a few weighted chances.
 *
 * The chance of raising the plants, as a function of the chance per seed, is a step from 0 to 1, and the narrower the
 * more plants are wanted. Only inside the step does it matter where the weight lies. So the step is found first, cut
 * into bins, and each bin gets the posterior's exact weight; all that lies below or above goes to the ends. This needs
 * about a dozen evaluations of the posterior, where bins over everything would need hundreds.
 */
import { chanceBelowProbit, roughProbit } from '../longevity/chance-below-probit';
import type { LotPosterior } from '../longevity/lot-model';
import { normalCdf, normalQuantile } from '../statistics/normal-distribution';
import type { ChanceDistribution } from './raising-chance';

const BINS = 24;
const KNOTS = 11;
/** Half widths of the step in its own standard deviations: outside it is within 1e-4 of 0 or 1. */
const STEP_HALF_WIDTH = 4;
/** With hardly a seed to spare the step has a long foot: P(all n of n grow) falls like exp(-n times the dead share). */
const FOOT_HALF_WIDTH = 7;
/** The step looked for may lie lower than its guess, most so (about 1.65) for a lot that is known well. */
const SEARCH_MARGIN = 1.65;
/** Viabilities below this probit count as 0. */
const DEADEST_PROBIT = -9;
/** Dead seeds expected in the sowing, at which a lot counts as wholly alive: bins above would be wasted. */
const FEWEST_DEAD = 0.05;
/** Chances closer to 0 or 1 than this interpolate as if they were this. */
const LEAST_CHANCE = 1e-15;
/** How many of its standard deviations from its mean the posterior is looked at. */
const POSTERIOR_REACH = 6;
const MOST_QUANTILE_STEPS = 14;
const NOTHING_KNOWN: ReadonlyMap<number, number> = new Map();

/** A lot at a day: from which posterior, how aged, and how many of its living seeds come up. */
export interface LotAtSowing {
  posterior: LotPosterior;
  /** published ageing at sowing, probits, >= 0 */
  probitsLost: number;
  /** chance that a living seed becomes a plant, in (0, 1] */
  emergence: number;
}

/** Where the step lies, as far as the posterior reaches, and the posterior's weight on either side. Probits. */
export interface Step {
  from: number;
  to: number;
  belowFrom: number;
  belowTo: number;
  /** chance per seed that stands for all the weight below the step, at its upper end, and for all above it */
  chanceBelow: number;
  chanceAtEnd: number;
  chanceAbove: number;
}

/**
 * The step of a given sowing, `plants` wanted from `seeds`: two evaluations of the posterior, which settle most sowings.
 *
 * @param lot     posterior, ageing and emergence
 * @param plants  integer >= 1
 * @param seeds   integer >= plants
 * @returns the step; see `chancesWithin`
 * Checked against dense integration: tests/domain/regrow/seeds-to-sow-uncertain.test.ts
 */
export function stepOfSowing(lot: LotAtSowing, plants: number, seeds: number): Step {
  return stepAt(lot, plants, Math.min(plants / seeds, 1), FOOT_HALF_WIDTH);
}

/**
 * Chances per seed around the step of a given sowing: `plants` wanted from `seeds`.
 *
 * @param lot     posterior, ageing and emergence
 * @param plants  integer >= 1
 * @param seeds   integer >= plants
 * @returns 26 weights that add to 1, with their chances in ascending order
 * Checked against dense integration: tests/domain/regrow/seeds-to-sow-uncertain.test.ts
 */
export function chancesForSowing(lot: LotAtSowing, plants: number, seeds: number): ChanceDistribution {
  return chancesWithin(lot, stepOfSowing(lot, plants, seeds));
}

/**
 * Chances per seed around the step at which the number of seeds to sow will be decided: where about `1 - assurance` of
 * the weight lies below.
 *
 * @param lot           posterior, ageing and emergence
 * @param plants        integer >= 1
 * @param assurance     in (0, 1)
 * @returns 26 weights that add to 1, with their chances in ascending order; and the chance per seed at the step
 * Checked against dense integration: tests/domain/regrow/seeds-to-sow-uncertain.test.ts
 */
export function chancesForAssurance(
  lot: LotAtSowing,
  plants: number,
  assurance: number,
): ChanceDistribution & { chanceAtStep: number } {
  const known = new Map<number, number>();
  const at = lot.emergence * normalCdf(roughQuantile(lot, plants, 1 - assurance, known));
  const step = stepAt(lot, plants, at, STEP_HALF_WIDTH + SEARCH_MARGIN);
  return { ...chancesWithin(lot, step, known), chanceAtStep: at };
}

function stepAt(
  { posterior, probitsLost, emergence }: LotAtSowing,
  plants: number,
  chanceAtStep: number,
  halfWidthBelow: number,
): Step {
  const { mean, sd: deviation } = roughProbit(posterior, probitsLost, -DEADEST_PROBIT);
  const liveliest = -normalQuantile(Math.min(0.001, FEWEST_DEAD / plants));
  const stepFrom = probitOf(stepEdge(plants, chanceAtStep, -halfWidthBelow) / emergence, liveliest);
  const stepTo = probitOf(stepEdge(plants, chanceAtStep, STEP_HALF_WIDTH) / emergence, liveliest);
  const from = Math.min(Math.max(stepFrom, mean - POSTERIOR_REACH * deviation), stepTo);
  const to = Math.max(Math.min(stepTo, mean + POSTERIOR_REACH * deviation), from + 1e-6);
  const chanceAtEnd = emergence * normalCdf(to);
  return {
    from,
    to,
    belowFrom: chanceBelowProbit(posterior, probitsLost, from),
    belowTo: chanceBelowProbit(posterior, probitsLost, to),
    chanceBelow: emergence * normalCdf(from),
    chanceAtEnd,
    chanceAbove: to === liveliest ? emergence : chanceAtEnd,
  };
}

/**
 * The weights within a step.
 *
 * @param lot    posterior, ageing and emergence
 * @param step   of that lot
 * @param known  points of the posterior that were already evaluated: probit viability to chance of being below it
 * @returns 26 weights that add to 1, with their chances in ascending order
 * Checked against dense integration: tests/domain/regrow/seeds-to-sow-uncertain.test.ts
 */
export function chancesWithin(
  { posterior, probitsLost, emergence }: LotAtSowing,
  step: Step,
  known: ReadonlyMap<number, number> = NOTHING_KNOWN,
): { weights: Float64Array; chances: Float64Array } {
  const { from, to } = step;
  const knots: { z: number; goal: number }[] = [];
  const addKnot = (z: number, below: number) =>
    knots.push({ z, goal: normalQuantile(Math.min(Math.max(below, LEAST_CHANCE), 1 - LEAST_CHANCE)) });
  addKnot(from, step.belowFrom);
  for (let index = 1; index < KNOTS - 1; index++) {
    const z = from + ((to - from) * index) / (KNOTS - 1);
    addKnot(z, chanceBelowProbit(posterior, probitsLost, z));
  }
  addKnot(to, step.belowTo);
  for (const [z, below] of known) if (z > from && z < to) addKnot(z, below);
  knots.sort((a, b) => a.z - b.z);

  const weights = new Float64Array(BINS + 2);
  const chances = new Float64Array(BINS + 2);
  let below = 0;
  const interpolate = interpolator(knots);
  for (let bin = 0; bin <= BINS; bin++) {
    const end = from + ((to - from) * bin) / BINS;
    const belowEnd = Math.max(below, normalCdf(interpolate(end)));
    weights[bin] = belowEnd - below;
    chances[bin] = bin === 0 ? step.chanceBelow : emergence * normalCdf(end - (to - from) / (2 * BINS));
    below = belowEnd;
  }
  weights[BINS + 1] = 1 - below;
  chances[BINS + 1] = step.chanceAbove;
  return { weights, chances };
}

/**
 * The chance per seed that lies a number of standard deviations from the step's middle. The step is a beta distribution
 * function with relative variance (1 - p) / plants; its cube root is close to normal (Wilson & Hilferty 1931).
 */
function stepEdge(plants: number, chanceAtStep: number, deviations: number): number {
  const variance = (1 - chanceAtStep + 1 / (plants + 1)) / plants;
  const cubeRoot = 1 - variance / 9 + (deviations * Math.sqrt(variance)) / 3;
  return chanceAtStep * Math.max(cubeRoot, 0.1) ** 3;
}

function probitOf(viability: number, liveliest: number): number {
  return viability >= 1 ? liveliest : Math.max(DEADEST_PROBIT, Math.min(liveliest, normalQuantile(viability)));
}

/** The probit viability below which about this share of the weight lies, to within a part of the step's width. */
function roughQuantile(
  { posterior, probitsLost, emergence }: LotAtSowing,
  plants: number,
  share: number,
  known: Map<number, number>,
): number {
  const { mean, sd: deviation } = roughProbit(posterior, probitsLost, -DEADEST_PROBIT);
  const goal = normalQuantile(share);
  let z = clampProbit(mean + goal * deviation);
  let lower = DEADEST_PROBIT;
  let upper = -DEADEST_PROBIT;
  let slope = 1 / deviation;
  let before: { z: number; error: number } | null = null;
  for (let step = 0; step < MOST_QUANTILE_STEPS; step++) {
    const below = chanceBelowProbit(posterior, probitsLost, z);
    known.set(z, below);
    const error = normalQuantile(Math.min(Math.max(below, LEAST_CHANCE), 1 - LEAST_CHANCE)) - goal;
    if (error > 0) upper = z;
    else lower = z;
    if (before !== null && before.z !== z) slope = Math.max((error - before.error) / (z - before.z), 0.05 / deviation);
    before = { z, error };
    const wanted = z - error / slope;
    const next = wanted > lower && wanted < upper ? wanted : (lower + upper) / 2;
    const alive = normalCdf(z);
    const stepDeviation = (Math.sqrt((1 - emergence * alive) / plants) * alive) / normalDensity(z);
    if (Math.abs(next - z) < stepDeviation) return next;
    z = next;
  }
  return z;
}

const normalDensity = (z: number): number => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
const clampProbit = (z: number): number => Math.max(DEADEST_PROBIT, Math.min(-DEADEST_PROBIT, z));

/**
 * Interpolates between knots in rising order, smooth and never overshooting (Fritsch & Butland 1984): the probit of a
 * distribution function is nearly straight, and exactly so for a normal one.
 */
function interpolator(knots: readonly { z: number; goal: number }[]): (z: number) => number {
  const count = knots.length;
  const secants = new Float64Array(count);
  const slopes = new Float64Array(count);
  for (let k = 0; k + 1 < count; k++) {
    const [a, b] = [knots[k], knots[k + 1]] as [{ z: number; goal: number }, { z: number; goal: number }];
    secants[k] = b.z > a.z ? (b.goal - a.goal) / (b.z - a.z) : 0;
  }
  slopes[0] = secants[0] as number;
  slopes[count - 1] = secants[count - 2] as number;
  for (let k = 1; k + 1 < count; k++) {
    const [before, after] = [secants[k - 1] as number, secants[k] as number];
    slopes[k] = before > 0 && after > 0 ? (2 * before * after) / (before + after) : 0;
  }
  let k = 0; // called with rising z, so the interval only moves forward
  return (z) => {
    while (k + 2 < count && z > (knots[k + 1] as { z: number }).z) k++;
    const [a, b] = [knots[k], knots[k + 1]] as [{ z: number; goal: number }, { z: number; goal: number }];
    const width = b.z - a.z;
    const t = width > 0 ? Math.min(Math.max((z - a.z) / width, 0), 1) : 0;
    const [d0, d1] = [(slopes[k] as number) * width, (slopes[k + 1] as number) * width];
    const rise = b.goal - a.goal;
    return a.goal + t * (d0 + t * (3 * rise - 2 * d0 - d1 + t * (d0 + d1 - 2 * rise)));
  };
}
