/**
 * When a lot will fall to a threshold in the store where it lies now: ageing still to go, over the present rate of
 * ageing. It assumes that the store stays as it is; a warmer summer or a move makes a new forecast.
 */
import { requireProportion } from '../statistics/require-proportion';
import type { LotPosterior } from './lot-model';
import { probitsUntilBelow } from './probits-until-below';

/** Farther than this a date is not told: no steward plans by it and no store stays as it is so long. Our own choice. */
export const HORIZON_DAYS = 200 * 365.25;

/** The chance of being below the threshold at which a test is due, whatever the prediction. The bank's own choice. */
export const CHANCE_THAT_CALLS_FOR_A_TEST = 0.1;

/**
 * Days from now until the chance of being below a threshold reaches a level.
 *
 * @param posterior      from `fitLot`
 * @param probitsLostNow published ageing up to now, probits, >= 0
 * @param ratePerDay     published ageing per day under the present store, probits per day, >= 0
 * @param threshold      a viability, proportion in (0, 1)
 * @param chance         in (0, 1)
 * @param horizonDays    days, > 0; default 200 years
 * @returns days, >= 0 (0: already so likely or more); null when it lies beyond the horizon
 * @throws RangeError when an argument is outside its range
 * Checked by undoing `probabilityBelow`: tests/domain/longevity/time-to-threshold.test.ts
 */
export function daysUntilChanceBelow({
  posterior,
  probitsLostNow,
  ratePerDay,
  threshold,
  chance,
  horizonDays = HORIZON_DAYS,
}: {
  posterior: LotPosterior;
  probitsLostNow: number;
  ratePerDay: number;
  threshold: number;
  chance: number;
  horizonDays?: number;
}): number | null {
  requireNotNegative('probitsLostNow', probitsLostNow);
  requireNotNegative('ratePerDay', ratePerDay);
  if (!(horizonDays > 0)) throw new RangeError(`daysUntilChanceBelow: horizonDays must be above 0, got ${horizonDays}`);
  const probits = probitsUntilBelow(posterior, { threshold, chance });
  if (probits === null) return null;
  const toGo = probits - probitsLostNow;
  if (toGo <= 0) return 0;
  // Multiplied, not divided: a store that does not age its seed has no date, and 1 / 0 is not one.
  if (toGo > ratePerDay * horizonDays) return null;
  return toGo / ratePerDay;
}

/**
 * The dates that decisions hang on, as days from now.
 *
 * @param posterior      from `fitLot`
 * @param probitsLostNow published ageing up to now, probits, >= 0
 * @param ratePerDay     published ageing per day under the present store, probits per day, >= 0
 * @param threshold      a viability, proportion in (0, 1)
 * @param level          probability inside the band of dates, in (0, 1); default 0.9
 * @returns `median`: the lot is as likely below as not; `earliest` and `latest`: the band around it; `testDue`: the chance of
 *          being below reaches 10 %. Each is null beyond 200 years, 0 when it has passed.
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/longevity/time-to-threshold.test.ts
 */
export function timeToThreshold({
  level = 0.9,
  ...question
}: {
  posterior: LotPosterior;
  probitsLostNow: number;
  ratePerDay: number;
  threshold: number;
  level?: number;
  horizonDays?: number;
}): { median: number | null; earliest: number | null; latest: number | null; testDue: number | null } {
  requireProportion('timeToThreshold', 'level', level, true);
  const daysAt = (chance: number): number | null => daysUntilChanceBelow({ ...question, chance });
  return {
    median: daysAt(0.5),
    earliest: daysAt(0.5 * (1 - level)),
    latest: daysAt(0.5 * (1 + level)),
    testDue: daysAt(CHANCE_THAT_CALLS_FOR_A_TEST),
  };
}

function requireNotNegative(name: string, value: number): void {
  if (!(value >= 0 && Number.isFinite(value))) {
    throw new RangeError(`daysUntilChanceBelow: ${name} must be finite and not negative, got ${value}`);
  }
}
