/**
 * From a jar weighed now and then while it dries: how moist is the seed, when will it be dry enough, or will it never?
 *
 * Only water leaves, so weight is moisture (drying.ts). Thin layers lose water in proportion to what is still to lose
 * (first order): the weight approaches a level, where seed and air are in balance. The level is fitted, or taken from
 * the drying air when that is known. Deep layers and air that changes do not follow one exponential.
 */
import { edgeBetween } from '../statistics/edge-between';
import { normalQuantile } from '../statistics/normal-distribution';
import { requireProportion } from '../statistics/require-proportion';
import { studentTQuantile } from '../statistics/student-t';
import { type ApproachFit, approachReaches, fitApproach, type Reading, squaresThrough } from './approach-fit';
import { targetWeight } from './drying';

export type Weighing = { hours: number; weightG: number };

export type DryingVerdict =
  /** dry enough since this weighing */
  | { kind: 'reached'; hours: number }
  /** hours of the first weighing + this; upper null: may also level off before the target */
  | { kind: 'on-the-way'; hours: number; lowerHours: number; upperHours: number | null; fit: ApproachFit }
  /** `sure` false: the target is still inside the interval of the level, so it may yet be reached */
  | {
      kind: 'levels-off-above';
      settlesAtPercent: number;
      lowerPercent: number | null;
      upperPercent: number | null;
      sure: boolean;
      fit: ApproachFit;
    }
  | {
      kind: 'cannot-say';
      reason: 'fewer-than-3-weighings' | 'no-change' | 'taking-up-water' | 'no-levelling-off-seen';
      /** hours at which a straight line through the weighings would reach the target: it will not be sooner */
      soonestHours: number | null;
    };

export type DryingProgress =
  | {
      ok: true;
      moistureNowPercent: number;
      /** how far half a step of the balance moves it, points */
      moistureNowErrorPoints: number;
      dryMatterG: number;
      targetWeightG: number;
      level: number;
      verdict: DryingVerdict;
    }
  | { ok: false; reason: 'lighter-than-its-dry-matter'; hours: number }
  | { ok: false; reason: 'air-too-moist'; settlesAtPercent: number };

/** Past this many times the span watched, "when" is not a date any more: the upper end is left open. */
const FARTHEST_TIMES_SPAN = 100;

/**
 * Moisture now, and when seed will reach its target.
 *
 * @param weighings               at least 1; hours from any start, distinct, any order; weightG grams of seed alone
 *                                (jar taken off), > 0
 * @param startMoisturePercent    moisture at the earliest weighing, percent of fresh weight, in [0, 100)
 * @param targetMoisturePercent   wanted, percent of fresh weight, in [0, 100)
 * @param stepG                   smallest step of the balance, grams, > 0: a floor for the scatter, so that three
 *                                weighings on a perfect curve are not taken for certainty
 * @param settlesAtPercent        moisture the drying air is known to bring the seed to, or null to find it from the
 *                                weighings; above the target the answer is 'air-too-moist' at once
 * @param level                   of the intervals, in (0, 1); 0.9 by default
 * @returns hours are those of the weighings' own clock. 'lighter-than-its-dry-matter' names the weighing at fault
 * @throws RangeError when an argument is outside its range
 * @see first-order drying (general method; own choice here); intervals by profile of the squares
 * Checked against R `nls` and `confint`: tests/golden/drying-progress.json
 */
export function dryingProgress({
  weighings,
  startMoisturePercent,
  targetMoisturePercent,
  stepG,
  settlesAtPercent = null,
  level = 0.9,
}: {
  weighings: readonly Weighing[];
  startMoisturePercent: number;
  targetMoisturePercent: number;
  stepG: number;
  settlesAtPercent?: number | null;
  level?: number;
}): DryingProgress {
  if (!(stepG > 0 && Number.isFinite(stepG))) throw new RangeError(`dryingProgress: stepG must be > 0, got ${stepG}`);
  requireProportion('dryingProgress', 'level', level, true);
  for (const { hours, weightG } of weighings) {
    if (!(Number.isFinite(hours) && weightG > 0 && Number.isFinite(weightG))) {
      throw new RangeError(`dryingProgress: weighings must be finite with weightG > 0, got ${weightG} g at ${hours} h`);
    }
  }
  const sorted = [...weighings].sort((a, b) => a.hours - b.hours);
  const first = sorted[0];
  const last = sorted.at(-1);
  if (first === undefined || last === undefined) throw new RangeError('dryingProgress: weighings must not be empty');
  const weightAt = (targetMoisturePercentThere: number) =>
    targetWeight({
      weight: first.weightG,
      moisturePercent: startMoisturePercent,
      targetMoisturePercent: targetMoisturePercentThere,
    });
  const dryMatterG = weightAt(0);
  const targetWeightG = weightAt(targetMoisturePercent);
  const tooLight = sorted.find(({ weightG }) => !(weightG >= dryMatterG));
  if (tooLight !== undefined) return { ok: false, reason: 'lighter-than-its-dry-matter', hours: tooLight.hours };
  const moistureOf = (weightG: number) => (100 * (weightG - dryMatterG)) / weightG;
  const progress = {
    ok: true as const,
    moistureNowPercent: moistureOf(last.weightG),
    moistureNowErrorPoints: ((stepG / 2) * 100 * dryMatterG) / last.weightG ** 2,
    dryMatterG,
    targetWeightG,
    level,
  };

  // Half a step above the target weight reads as the target weight.
  const reached = sorted.find(({ weightG }) => weightG <= targetWeightG + stepG / 2);
  if (reached !== undefined && last.weightG <= targetWeightG + stepG / 2) {
    return { ...progress, verdict: { kind: 'reached', hours: reached.hours } };
  }
  if (settlesAtPercent !== null && settlesAtPercent >= targetMoisturePercent) {
    return { ok: false, reason: 'air-too-moist', settlesAtPercent };
  }
  const readings = sorted.map(({ hours, weightG }) => ({ hours: hours - first.hours, value: weightG }));
  const refusal = reasonNotToFit(readings, stepG);
  if (refusal !== null) {
    return { ...progress, verdict: { kind: 'cannot-say', reason: refusal, soonestHours: null } };
  }

  const plateau = settlesAtPercent === null ? null : weightAt(settlesAtPercent);
  const fit = fitApproach(readings, plateau);
  if (plateau === null && (fit.straight || fit.plateau < dryMatterG)) {
    const soonest = straightLineReaches(readings, targetWeightG);
    const soonestHours = soonest === null ? null : Math.max(first.hours + soonest, last.hours);
    return { ...progress, verdict: { kind: 'cannot-say', reason: 'no-levelling-off-seen', soonestHours } };
  }
  const allowance = squaresAllowance(readings, fit, plateau, stepG, level);
  const inside = (squares: number) => squares - fit.squares <= allowance;
  const hours = approachReaches(fit, targetWeightG);
  if (hours === null) {
    const [lowerG, upperG] = plateauInterval(readings, fit, dryMatterG, inside);
    return {
      ...progress,
      verdict: {
        kind: 'levels-off-above',
        settlesAtPercent: moistureOf(fit.plateau),
        lowerPercent: lowerG === null ? null : moistureOf(lowerG),
        upperPercent: upperG === null ? null : moistureOf(upperG),
        sure: !inside(fitApproach(readings, targetWeightG).squares),
        fit,
      },
    };
  }
  const watched = last.hours - first.hours;
  const at = (there: number) => inside(squaresThrough(readings, { hours: there, value: targetWeightG }, plateau));
  // The last weighing was above the target, so the moment is ahead even where scatter puts the curve's crossing behind.
  const best = Math.max(hours, watched);
  return {
    ...progress,
    verdict: {
      kind: 'on-the-way',
      hours: first.hours + best,
      lowerHours: first.hours + (at(watched) ? watched : edge(best, watched, at)),
      upperHours: upperEnd(best, watched, at, first.hours),
      fit,
    },
  };
}

function reasonNotToFit(
  readings: readonly Reading[],
  stepG: number,
): 'fewer-than-3-weighings' | 'no-change' | 'taking-up-water' | null {
  if (readings.length < 3) return 'fewer-than-3-weighings';
  const values = readings.map(({ value }) => value);
  if (Math.max(...values) - Math.min(...values) <= stepG * (1 + 1e-9)) return 'no-change';
  return (values.at(-1) ?? 0) >= (values[0] ?? 0) ? 'taking-up-water' : null;
}

/** t^2 s^2: squares that a value may cost and still be inside. With no residual left to judge by, the balance's step is all. */
function squaresAllowance(
  readings: readonly Reading[],
  fit: ApproachFit,
  plateau: number | null,
  stepG: number,
  level: number,
): number {
  const degreesOfFreedom = readings.length - (plateau === null ? 3 : 2);
  const ofBalance = stepG ** 2 / 12;
  const upper = (1 + level) / 2;
  if (degreesOfFreedom < 1) return normalQuantile(upper) ** 2 * ofBalance;
  return studentTQuantile(upper, degreesOfFreedom) ** 2 * Math.max(fit.squares / degreesOfFreedom, ofBalance);
}

/** Weights between which the level lies; null where the readings leave that side open (below: down to the dry matter). */
function plateauInterval(
  readings: readonly Reading[],
  fit: ApproachFit,
  dryMatterG: number,
  inside: (squares: number) => boolean,
): [number | null, number | null] {
  const at = (plateau: number) => inside(fitApproach(readings, plateau).squares);
  // Seed that is drying levels off below its lowest weighing but for scatter, so the first weighing is far enough up.
  const highest = readings[0]?.value ?? fit.plateau;
  return [
    at(dryMatterG) ? null : edge(fit.plateau, dryMatterG, at),
    at(highest) ? null : edge(fit.plateau, highest, at),
  ];
}

function upperEnd(best: number, watched: number, at: (hours: number) => boolean, startHours: number): number | null {
  const farthest = FARTHEST_TIMES_SPAN * Math.max(watched, best);
  return at(farthest) ? null : startHours + edge(best, farthest, at);
}

/** Where `at` turns from true (at `inside`) to false (at `outside`), by halving. */
function edge(inside: number, outside: number, at: (value: number) => boolean): number {
  const [good, bad] = edgeBetween(at, inside, outside, 1e-9 * Math.abs(inside));
  return (good + bad) / 2;
}

/** Hours at which the straight line of least squares comes down to a value; null when it does not fall. */
function straightLineReaches(readings: readonly Reading[], value: number): number | null {
  const meanHours = readings.reduce((sum, reading) => sum + reading.hours, 0) / readings.length;
  const meanValue = readings.reduce((sum, reading) => sum + reading.value, 0) / readings.length;
  let xx = 0;
  let xy = 0;
  for (const reading of readings) {
    xx += (reading.hours - meanHours) ** 2;
    xy += (reading.hours - meanHours) * (reading.value - meanValue);
  }
  return xy < 0 ? meanHours + ((value - meanValue) * xx) / xy : null;
}
