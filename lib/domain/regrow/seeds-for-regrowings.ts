/**
 * Seeds that must be left for several regrowings in a row: the second is sown a year after the first, from seed that is a
 * year older, and may take many more where seed ages fast or nobody knows how alive it is.
 */
import type { CalendarDate } from '../calendar/calendar-date';
import type { LotPosterior } from '../longevity/lot-model';
import { comingSowings } from './coming-sowings';
import { seedsToSowUncertain } from './seeds-to-sow';

/**
 * Seeds to sow in each of the coming seasons, one regrowing a season.
 *
 * @param today           calendar date
 * @param sowingMonth     1 to 12
 * @param posterior       of the lot, from fitLot
 * @param probitsLostNow  published ageing up to today, probits, >= 0
 * @param probitsPerDay   published ageing per day where it lies now, probits, >= 0
 * @param plants          plants wanted each time, integer >= 1
 * @param emergence       chance that a living seed becomes a plant, in (0, 1]
 * @param assurance       of raising them, each time, in (0, 1)
 * @param regrowings      how many, integer >= 1
 * @returns seeds for each, soonest first, never falling but for rounding; Infinity where no number is enough
 * @throws RangeError when an argument is outside its range
 * @see docs/methods/seed-to-spare.md
 * Checked in tests/domain/regrow/seeds-for-regrowings.test.ts
 */
export function seedsForRegrowings({
  today,
  sowingMonth,
  posterior,
  probitsLostNow,
  probitsPerDay,
  plants,
  emergence,
  assurance,
  regrowings,
}: {
  today: CalendarDate;
  sowingMonth: number;
  posterior: LotPosterior;
  probitsLostNow: number;
  probitsPerDay: number;
  plants: number;
  emergence: number;
  assurance: number;
  regrowings: number;
}): number[] {
  if (!Number.isInteger(regrowings) || regrowings < 1) {
    throw new RangeError(`seedsForRegrowings: regrowings must be an integer >= 1, got ${regrowings}`);
  }
  if (!(probitsPerDay >= 0 && Number.isFinite(probitsPerDay))) {
    throw new RangeError(`seedsForRegrowings: probitsPerDay must be a finite number >= 0, got ${probitsPerDay}`);
  }
  const sowings = comingSowings(today, sowingMonth);
  return Array.from({ length: regrowings }, (_, index) => {
    const probitsLost = probitsLostNow + probitsPerDay * sowings.daysAhead(sowings.first + index);
    return seedsToSowUncertain({ plants, posterior, probitsLost, emergence, assurance });
  });
}
