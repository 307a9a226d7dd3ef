/**
 * Whether seed dries too fast. Large seed that loses water quickly cracks, and moist seed in hot air dies; the loss of
 * moisture by the hour shows both.
 *
 * Status: from memory. Half a point an hour for peas and beans, one point for other seed.
 */
import type { Weighing } from './drying-progress';

export const FASTEST_POINTS_PER_HOUR = { legume: 0.5, other: 1 } as const;
/** Over less than this two weighings mostly show the balance and the air that stirs it. */
const SHORTEST_HOURS = 0.5;

export interface DryingPace {
  pointsPerHour: number;
  limitPointsPerHour: number;
  fromHours: number;
  toHours: number;
}

/**
 * The fastest loss between two weighings, where it is too fast.
 *
 * @param weighings             hours distinct, any order; grams of seed alone
 * @param startMoisturePercent  at the earliest weighing, percent of fresh weight, in [0, 100)
 * @param family                botanical family of the crop
 * @returns the fastest stretch of at least half an hour, or null where none passes the limit
 * @throws RangeError when a weight is not above 0 or the moisture is outside its range
 * Checked in tests/domain/moisture/drying-pace.test.ts
 */
export function dryingTooFast({
  weighings,
  startMoisturePercent,
  family,
}: {
  weighings: readonly Weighing[];
  startMoisturePercent: number;
  family: string;
}): DryingPace | null {
  if (!(startMoisturePercent >= 0 && startMoisturePercent < 100)) {
    throw new RangeError(`dryingTooFast: startMoisturePercent must be in [0, 100), got ${startMoisturePercent}`);
  }
  const sorted = [...weighings].sort((a, b) => a.hours - b.hours);
  const first = sorted[0];
  if (first === undefined) return null;
  const dryMatterG = (first.weightG * (100 - startMoisturePercent)) / 100;
  const moistureOf = ({ weightG }: Weighing) => {
    if (!(weightG > 0)) throw new RangeError(`dryingTooFast: weightG must be above 0, got ${weightG}`);
    return (100 * (weightG - dryMatterG)) / weightG;
  };
  const limitPointsPerHour = FASTEST_POINTS_PER_HOUR[family === 'Fabaceae' ? 'legume' : 'other'];
  let fastest: DryingPace | null = null;
  for (let index = 1; index < sorted.length; index += 1) {
    const [before, after] = [sorted[index - 1] as Weighing, sorted[index] as Weighing];
    const hours = after.hours - before.hours;
    if (hours < SHORTEST_HOURS) continue;
    const pointsPerHour = (moistureOf(before) - moistureOf(after)) / hours;
    if (pointsPerHour > Math.max(limitPointsPerHour, fastest?.pointsPerHour ?? 0)) {
      fastest = { pointsPerHour, limitPointsPerHour, fromHours: before.hours, toHours: after.hours };
    }
  }
  return fastest;
}
