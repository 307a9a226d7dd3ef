/**
 * The last safe season: the last sowing for which the seed left still has the wanted chance of raising the plants
 * needed. Waiting beyond it is a gamble with the lot; a lot past it is a rescue.
 */
import { type CalendarDate, daysBetween } from '../calendar/calendar-date';
import type { LotPosterior } from '../longevity/lot-model';
import { probitsUntilBelow } from '../longevity/probits-until-below';
import { normalQuantile } from '../statistics/normal-distribution';
import { chanceFromSowing, foundAlong } from './chance-from-sowing';
import { comingSowings } from './coming-sowings';

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

const DAYS_PER_YEAR = 365.25;
/** A chance nearer to 0 or 1 says nothing of where it would be as wanted. */
const LEAST_TELLING = 0.001;
/** A season so near, and so far from the limit between two, is not looked at. */
const SURE_SEASONS = 3;
const SURE_MARGIN = 0.15;

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
  const days = daysBetween(outlook.today, sowOn);
  if (days < 0)
    throw new RangeError(`chanceOfRaisingOn: sowOn must be today (${outlook.today}) or later, got ${sowOn}`);
  return chanceAfterDays(outlook, days);
}

/** The same for a sowing so many days ahead. */
export function chanceAfterDays(outlook: SowingOutlook, days: number): number {
  const { posterior, probitsLostNow, probitsPerDay, emergence, plantsNeeded, seedsLeft } = outlook;
  return chanceFromSowing(
    { posterior, probitsLost: probitsLostNow + days * probitsPerDay, emergence },
    plantsNeeded,
    seedsLeft,
  );
}

/**
 * The last sowing season with at least the wanted chance of raising the plants needed, if the lot stays in its present
 * store and no more seed is taken.
 *
 * @param outlook      the lot
 * @param sowingMonth  month in which the bank or crop sows, 1 to 12
 * @param assurance    wanted chance, in (0, 1); default 0.95
 * @param chanceInNextSeason  of raising the plants in the next season, where it is known already
 * @returns the season's year, 'past', or 'beyond horizon'
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/regrow/last-safe-season.test.ts
 */
export function lastSafeSeason(
  outlook: SowingOutlook,
  sowingMonth: number,
  assurance = 0.95,
  chanceInNextSeason?: number,
): LastSafeSeason {
  requireOutlook(outlook, assurance);
  const sowings = comingSowings(outlook.today, sowingMonth);
  const chanceAfter = (season: number) => chanceAfterDays(outlook, sowings.daysAhead(season));
  const { first } = sowings;
  const last = first + HORIZON_SEASONS - 1;
  if ((chanceInNextSeason ?? chanceAfter(first)) < assurance) return 'past';
  if (chanceAfter(last) >= assurance) return 'beyond horizon';
  // The chance only falls from season to season: close in on the last safe one from where it is likely to be. How fast it
  // falls with ageing says how far to go; where that leads nowhere, growing strides and halving do.
  const goal = normalQuantile(assurance);
  const probitsPerSeason = outlook.probitsPerDay * DAYS_PER_YEAR;
  let safe = first;
  let unsafe = last;
  let stride = 1;
  let season = likelySeason(outlook, first, assurance);
  while (unsafe - safe > 1) {
    season = Math.min(Math.max(season, safe + 1), unsafe - 1);
    const chance = chanceAfter(season);
    if (chance >= assurance) safe = season;
    else unsafe = season;
    if (unsafe - safe <= 1) break;
    if (chance > LEAST_TELLING && chance < 1 - LEAST_TELLING) {
      const probit = normalQuantile(chance);
      const fall =
        foundAlong.lossPerProbit * probitsPerSeason * Math.sqrt(2 * Math.PI) * Math.exp(0.5 * probit * probit);
      const seasonsLeft = (probit - goal) / fall;
      const target = season + Math.floor(seasonsLeft);
      const isSure =
        Math.abs(seasonsLeft) < SURE_SEASONS && Math.abs(seasonsLeft - Math.round(seasonsLeft)) > SURE_MARGIN;
      if (isSure && target >= safe && target < unsafe) return target;
      // Just short of the season aimed at, so that one look more mostly closes the bracket.
      season = chance >= assurance ? Math.max(season + 1, target) : Math.min(season - 1, target + 1);
    } else if (safe > first && unsafe < last) season = (safe + unsafe) >> 1;
    else {
      season += chance >= assurance ? stride : -stride;
      stride *= 2;
    }
  }
  return safe;
}

/** The season in which too few seeds may be left alive: as if the seeds raised exactly their share of plants. */
function likelySeason(outlook: SowingOutlook, first: number, assurance: number): number {
  const { posterior, probitsLostNow, probitsPerDay, plantsNeeded, seedsLeft, emergence } = outlook;
  const viabilityNeeded = plantsNeeded / seedsLeft / emergence;
  if (viabilityNeeded >= 1) return first;
  const probits =
    probitsUntilBelow(posterior, { threshold: viabilityNeeded, chance: 1 - assurance }) ?? Number.POSITIVE_INFINITY;
  const years = (probits - probitsLostNow) / probitsPerDay / DAYS_PER_YEAR;
  return first + Math.round(Math.min(years, HORIZON_SEASONS));
}

function requireOutlook(outlook: SowingOutlook, assurance: number): void {
  const { probitsLostNow, probitsPerDay, seedsLeft, plantsNeeded, emergence } = outlook;
  const refuse = (name: string, range: string, value: number) => {
    throw new RangeError(`lastSafeSeason: ${name} must be ${range}, got ${value}`);
  };
  const finite = 'a finite number >= 0';
  if (!(probitsLostNow >= 0 && Number.isFinite(probitsLostNow))) refuse('probitsLostNow', finite, probitsLostNow);
  if (!(probitsPerDay >= 0 && Number.isFinite(probitsPerDay))) refuse('probitsPerDay', finite, probitsPerDay);
  if (!(Number.isInteger(seedsLeft) && seedsLeft >= 0)) refuse('seedsLeft', 'an integer >= 0', seedsLeft);
  if (!(Number.isInteger(plantsNeeded) && plantsNeeded >= 1)) refuse('plantsNeeded', 'an integer >= 1', plantsNeeded);
  if (!(emergence > 0 && emergence <= 1)) refuse('emergence', 'in (0, 1]', emergence);
  if (!(assurance > 0 && assurance < 1)) refuse('assurance', 'in (0, 1)', assurance);
}
