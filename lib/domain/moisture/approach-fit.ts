/**
 * Least-squares fit of a weight that approaches its resting value at a rate in proportion to the distance left:
 *   W(t) = P + A exp(-k t)
 * P where it levels off, A what it still has to lose at t = 0, k the rate. For a given k the other two are linear, so
 * the fit is one search over k; and so is the best fit under a condition (P given, or W at a given time given), from
 * which intervals come by profile: a value is inside while the squares it costs stay below t^2 times the variance.
 * That holds where the delta method fails: a level or a time that the data leave open on one side.
 *
 * Times are hours from the first weighing. Nothing here knows about seed.
 */

import { highestBetween } from '../statistics/golden-section';

export type Reading = { hours: number; value: number };

export type ApproachFit = {
  /** value it levels off at, in the unit of the readings */
  plateau: number;
  /** what was left to lose at hours = 0 */
  drop: number;
  /** per hour */
  rate: number;
  /** residual sum of squares */
  squares: number;
  /** the search stopped at its slowest rate: the readings are a straight line */
  straight: boolean;
};

/** Slowest rate tried, as a share of the time watched: below it a curve bends by less than a half percent. */
const SLOWEST_TIMES_SPAN = 0.01;
/** Fastest rate tried, times the shortest gap: exp(-40) is nothing, so a faster one fits no differently. */
const FASTEST_TIMES_GAP = 40;
const GRID_STEPS = 160;
/** Sections of the bracket in log rate, to below 1e-11; the squares are flat there, so finer digits carry nothing. */
const RATE_SECTIONS = 50;

/**
 * Best fit, with the plateau free or given.
 *
 * @param readings  at least 2 with a plateau, 3 without, at distinct hours >= 0, sorted
 * @param plateau   value it levels off at, or null to fit it
 * @returns the fit
 * @throws RangeError when there are too few readings or they are not sorted by distinct hours
 * Checked against R `nls`: tests/golden/drying-progress.json
 */
export function fitApproach(readings: readonly Reading[], plateau: number | null): ApproachFit {
  requireReadings('fitApproach', readings, plateau === null ? 3 : 2);
  const fitAt = plateau === null ? freePlateau(readings) : givenPlateau(readings, plateau);
  const rate = bestRate(readings, (k) => fitAt(k).squares);
  return { ...fitAt(rate), rate, straight: rate <= slowest(readings) * 1.001 };
}

/**
 * Residual squares of the best fit that passes through a value at a time.
 *
 * @param readings  as fitApproach
 * @param through   hours >= 0 and the value there
 * @param plateau   value it levels off at, or null to leave it free
 * @returns sum of squares, >= that of fitApproach
 * @throws RangeError as fitApproach
 * Checked against R `confint` of a reparametrised `nls`: tests/golden/drying-progress.json
 */
export function squaresThrough(readings: readonly Reading[], through: Reading, plateau: number | null): number {
  requireReadings('squaresThrough', readings, plateau === null ? 3 : 2);
  const squaresAt = (rate: number) => {
    if (plateau !== null) {
      return sumOf(readings, ({ hours, value }) => {
        const fitted = plateau + (through.value - plateau) * Math.exp(rate * (through.hours - hours));
        return (value - fitted) ** 2;
      });
    }
    const atTime = Math.exp(-rate * through.hours);
    let xx = 0;
    let xy = 0;
    for (const { hours, value } of readings) {
      const x = Math.exp(-rate * hours) - atTime;
      xx += x * x;
      xy += x * (value - through.value);
    }
    const scale = xx === 0 ? 0 : xy / xx;
    return sumOf(
      readings,
      ({ hours, value }) => (value - through.value - scale * (Math.exp(-rate * hours) - atTime)) ** 2,
    );
  };
  return squaresAt(bestRate(readings, squaresAt));
}

/**
 * The value of the curve at a time. Hours from the first weighing.
 *
 * @param fit    from fitApproach
 * @param hours  hours from the first weighing
 * @returns in the unit of the readings
 * Checked in tests/domain/moisture/approach-fit.test.ts
 */
export function approachAt(fit: Pick<ApproachFit, 'plateau' | 'drop' | 'rate'>, hours: number): number {
  return fit.plateau + fit.drop * Math.exp(-fit.rate * hours);
}

/**
 * When the curve reaches a value.
 *
 * @param fit    from fitApproach
 * @param value  in the unit of the readings
 * @returns hours from the first weighing; null when the curve levels off before it
 * Checked in tests/domain/moisture/approach-fit.test.ts
 */
export function approachReaches(fit: Pick<ApproachFit, 'plateau' | 'drop' | 'rate'>, value: number): number | null {
  const share = (value - fit.plateau) / fit.drop;
  return share > 0 && Number.isFinite(share) ? -Math.log(share) / fit.rate : null;
}

type LinearPart = { plateau: number; drop: number; squares: number };

/** Regression on 1 - exp(-k t), which is exactly 0 at the first weighing and keeps its digits for a small k. */
function freePlateau(readings: readonly Reading[]): (rate: number) => LinearPart {
  const meanValue = sumOf(readings, ({ value }) => value) / readings.length;
  return (rate) => {
    const gone = readings.map(({ hours }) => -Math.expm1(-rate * hours));
    const meanGone = gone.reduce((sum, x) => sum + x, 0) / gone.length;
    let xx = 0;
    let xy = 0;
    readings.forEach(({ value }, i) => {
      const x = (gone[i] ?? 0) - meanGone;
      xx += x * x;
      xy += x * (value - meanValue);
    });
    const slope = xx === 0 ? 0 : xy / xx;
    let squares = 0;
    readings.forEach(({ value }, i) => {
      squares += (value - meanValue - slope * ((gone[i] ?? 0) - meanGone)) ** 2;
    });
    return { plateau: meanValue + slope * (1 - meanGone), drop: -slope, squares };
  };
}

function givenPlateau(readings: readonly Reading[], plateau: number): (rate: number) => LinearPart {
  return (rate) => {
    let xx = 0;
    let xy = 0;
    for (const { hours, value } of readings) {
      const left = Math.exp(-rate * hours);
      xx += left * left;
      xy += left * (value - plateau);
    }
    const drop = xy / xx;
    const squares = sumOf(readings, ({ hours, value }) => (value - plateau - drop * Math.exp(-rate * hours)) ** 2);
    return { plateau, drop, squares };
  };
}

/** Rate with the least squares: a grid in log rate finds the valley, a golden-section search its floor. */
function bestRate(readings: readonly Reading[], squaresAt: (rate: number) => number): number {
  const low = Math.log(slowest(readings));
  const step = (Math.log(fastest(readings)) - low) / GRID_STEPS;
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= GRID_STEPS; i++) {
    const squares = squaresAt(Math.exp(low + i * step));
    if (squares < least) {
      least = squares;
      best = i;
    }
  }
  const from = low + Math.max(0, best - 1) * step;
  const to = low + Math.min(GRID_STEPS, best + 1) * step;
  const floor = highestBetween((logRate) => -squaresAt(Math.exp(logRate)), from, to, RATE_SECTIONS);
  return Math.exp(floor.x);
}

function slowest(readings: readonly Reading[]): number {
  return SLOWEST_TIMES_SPAN / (readings.at(-1)?.hours ?? 1);
}

function fastest(readings: readonly Reading[]): number {
  let gap = Number.POSITIVE_INFINITY;
  for (let i = 1; i < readings.length; i++) {
    gap = Math.min(gap, (readings[i]?.hours ?? 0) - (readings[i - 1]?.hours ?? 0));
  }
  return FASTEST_TIMES_GAP / gap;
}

function sumOf(readings: readonly Reading[], of: (reading: Reading) => number): number {
  return readings.reduce((sum, reading) => sum + of(reading), 0);
}

function requireReadings(caller: string, readings: readonly Reading[], fewest: number): void {
  if (readings.length < fewest) {
    throw new RangeError(`${caller}: readings must be at least ${fewest}, got ${readings.length}`);
  }
  readings.forEach(({ hours, value }, i) => {
    const before = readings[i - 1]?.hours ?? (i === 0 ? -1 : Number.NaN);
    if (!(hours > before && hours >= 0 && Number.isFinite(hours) && Number.isFinite(value))) {
      throw new RangeError(`${caller}: readings must be finite and sorted by distinct hours >= 0, got ${hours} h`);
    }
  });
}
