/**
 * The last safe season: the last sowing for which the seed left still has the wanted chance of raising the plants
 * needed. Waiting beyond it is a gamble with the lot; a lot past it is a rescue.
 */
import { type CalendarDate, daysBetween } from '../calendar/calendar-date';
import { nextSowingDates } from '../calendar/season';
import type { LotPosterior } from '../longevity/lot-model';
import { chancesForSowing } from './chance-distribution';
import { chanceOfRaising } from './raising-chance';

/** Seasons looked ahead: beyond the working life of anyone who plans with the answer. */
export const HORIZON_SEASONS = 150;

/** Year of the last safe sowing; 'past' when even the next is not safe; 'beyond horizon' after 150 safe seasons. */
export type LastSafeSeason = number | 'past' | 'beyond horizon';

/** All that the chance of raising plants from a lot rests on. */
export interface SowingOutlook {
  posterior: LotPosterior;
  /** published ageing up to today, probits, >= 0 */
  probitsLostNow: number;
  /** published ageing per day in the present store, probits, >= 0 */
  probitsPerDay: number;
  today: CalendarDate;
  /** seeds in the packets, integer >= 0 */
  seedsLeft: number;
  /** integer >= 1 */
  plantsNeeded: number;
  /** chance that a living seed becomes a plant, in (0, 1] */
  emergence: number;
}

/**
 * Chance of raising the plants needed by sowing ALL the seed left on a day.
 *
 * @param outlook  the lot
 * @param sowOn    today or later
 * @returns probability in [0, 1]; 0 with fewer seeds than plants. Within 0.003 of dense integration
 * @throws RangeError when the day lies before today
 * Checked in tests/domain/regrow/last-safe-season.test.ts
 */
export function chanceOfRaisingOn(outlook: SowingOutlook, sowOn: CalendarDate): number {
  const { posterior, probitsLostNow, probitsPerDay, today, seedsLeft, plantsNeeded, emergence } = outlook;
  const days = daysBetween(today, sowOn);
  if (days < 0) throw new RangeError(`chanceOfRaisingOn: sowOn must be today (${today}) or later, got ${sowOn}`);
  if (seedsLeft < plantsNeeded) return 0;
  const lot = { posterior, probitsLost: probitsLostNow + days * probitsPerDay, emergence };
  return chanceOfRaising(plantsNeeded, seedsLeft, chancesForSowing(lot, plantsNeeded, seedsLeft));
}

/**
 * The last sowing season with at least the wanted chance of raising the plants needed, if the lot stays in its present
 * store and no more seed is taken.
 *
 * @param outlook      the lot
 * @param sowingMonth  month in which the bank or crop sows, 1 to 12
 * @param assurance    wanted chance, in (0, 1); default 0.95
 * @returns the season's year, 'past', or 'beyond horizon'
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/regrow/last-safe-season.test.ts
 */
export function lastSafeSeason(outlook: SowingOutlook, sowingMonth: number, assurance = 0.95): LastSafeSeason {
  requireOutlook(outlook, assurance);
  const sowings = nextSowingDates(outlook.today, sowingMonth, HORIZON_SEASONS);
  const isSafe = (index: number) =>
    chanceOfRaisingOn(outlook, (sowings[index] as { sowOn: string }).sowOn) >= assurance;
  if (!isSafe(0)) return 'past';
  if (isSafe(HORIZON_SEASONS - 1)) return 'beyond horizon';
  // The chance only falls from season to season, so halving finds the last safe one.
  let safe = 0;
  let unsafe = HORIZON_SEASONS - 1;
  while (unsafe - safe > 1) {
    const middle = (safe + unsafe) >> 1;
    if (isSafe(middle)) safe = middle;
    else unsafe = middle;
  }
  return (sowings[safe] as { season: number }).season;
}

function requireOutlook(outlook: SowingOutlook, assurance: number): void {
  const { probitsLostNow, probitsPerDay, seedsLeft, plantsNeeded, emergence } = outlook;
  const refuse = (name: string, range: string, value: number) => {
    throw new RangeError(`lastSafeSeason: ${name} must be ${range}, got ${value}`);
  };
  for (const [name, value] of Object.entries({ probitsLostNow, probitsPerDay })) {
    if (!(value >= 0 && Number.isFinite(value))) refuse(name, 'a finite number >= 0', value);
  }
  if (!(Number.isInteger(seedsLeft) && seedsLeft >= 0)) refuse('seedsLeft', 'an integer >= 0', seedsLeft);
  if (!(Number.isInteger(plantsNeeded) && plantsNeeded >= 1)) refuse('plantsNeeded', 'an integer >= 1', plantsNeeded);
  if (!(emergence > 0 && emergence <= 1)) refuse('emergence', 'in (0, 1]', emergence);
  if (!(assurance > 0 && assurance < 1)) refuse('assurance', 'in (0, 1)', assurance);
}
