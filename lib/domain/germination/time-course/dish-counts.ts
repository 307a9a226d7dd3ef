/*
 * What was seen in a germination test that was counted on several days.
 *
 * Nobody saw a seed germinate at its very moment: it was found at an inspection, and had germinated at some time since
 * the one before. So a germinated seed is an interval of days, and a seed that had not germinated when its dish was
 * last looked at is an interval without end. Everything in this folder starts from these intervals.
 */

/** Seeds found newly germinated at one inspection of one dish. */
export interface IntervalCount {
  /** day of the inspection before (the sowing is day 0), >= 0; the seeds germinated after it */
  fromDay: number;
  /** day of this inspection, > fromDay. Infinity: counted as not germinated when the dish was last seen, on fromDay */
  toDay: number;
  /** count, integer, >= 0 */
  germinated: number;
}

/** One dish (or all dishes together, where only their total was written down). */
export interface DishCounts {
  /** seeds set, integer, >= 1 */
  seeds: number;
  /** in any order; days without germination matter too, since they say how long the rest was watched */
  inspections: readonly IntervalCount[];
}

/** Seeds of which the same is known: they germinated after fromDay and by toDay (Infinity: not by fromDay). */
export interface SeedInterval {
  fromDay: number;
  toDay: number;
  /** seeds, >= 1 */
  seeds: number;
}

/**
 * Turns the counts of all dishes into intervals, one entry for each distinct interval, in order of days.
 *
 * Seeds that no line accounts for had not germinated at the last finite inspection of their own dish. A dish that was
 * lost early is therefore a dish whose last inspection is early.
 *
 * @param dishes  see DishCounts; at least one
 * @returns intervals sorted by fromDay, then toDay; their seeds add to the seeds set
 * @throws RangeError when there is no dish, a dish has no finite inspection, a day or count is outside its range, or more
 *         seeds are counted than were set
 * Checked in tests/domain/germination/time-course/dish-counts.test.ts
 */
export function seedIntervals(dishes: readonly DishCounts[]): SeedInterval[] {
  if (dishes.length === 0) throw new RangeError('seedIntervals: dishes must hold at least one dish, got none');
  const byInterval = new Map<string, SeedInterval>();
  const add = (fromDay: number, toDay: number, seeds: number) => {
    if (seeds === 0) return;
    const key = `${fromDay} ${toDay}`;
    const known = byInterval.get(key);
    if (known) known.seeds += seeds;
    else byInterval.set(key, { fromDay, toDay, seeds });
  };
  for (const { seeds, inspections } of dishes) {
    requireCount('seeds', seeds, 1);
    let counted = 0;
    let lastSeenDay = Number.NEGATIVE_INFINITY;
    for (const { fromDay, toDay, germinated } of inspections) {
      requireInterval(fromDay, toDay);
      requireCount('germinated', germinated, 0);
      counted += germinated;
      if (toDay < Number.POSITIVE_INFINITY) lastSeenDay = Math.max(lastSeenDay, toDay);
      else lastSeenDay = Math.max(lastSeenDay, fromDay);
      add(fromDay, toDay, germinated);
    }
    if (lastSeenDay === Number.NEGATIVE_INFINITY) {
      throw new RangeError('seedIntervals: inspections must hold at least one, got none');
    }
    if (counted > seeds) {
      throw new RangeError(`seedIntervals: germinated must add to at most the ${seeds} seeds set, got ${counted}`);
    }
    add(lastSeenDay, Number.POSITIVE_INFINITY, seeds - counted);
  }
  return [...byInterval.values()].sort((a, b) => a.fromDay - b.fromDay || a.toDay - b.toDay);
}

/**
 * Every day on which a dish was looked at, once each, in order.
 *
 * @param dishes  see DishCounts
 * @returns days, ascending
 * Checked in tests/domain/germination/time-course/dish-counts.test.ts
 */
export function inspectionDays(dishes: readonly DishCounts[]): number[] {
  const days = new Set<number>();
  for (const { inspections } of dishes) {
    for (const { fromDay, toDay } of inspections) days.add(toDay < Number.POSITIVE_INFINITY ? toDay : fromDay);
  }
  return [...days].sort((a, b) => a - b);
}

/** Seeds that were seen to germinate. */
export const isGerminated = ({ toDay }: SeedInterval): boolean => toDay < Number.POSITIVE_INFINITY;

function requireInterval(fromDay: number, toDay: number): void {
  if (!(fromDay >= 0 && fromDay < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`seedIntervals: fromDay must be a day of at least 0, got ${fromDay}`);
  }
  if (!(toDay > fromDay)) throw new RangeError(`seedIntervals: toDay must be after day ${fromDay}, got ${toDay}`);
}

function requireCount(argument: string, count: number, least: number): void {
  if (!Number.isSafeInteger(count) || count < least) {
    throw new RangeError(`seedIntervals: ${argument} must be a whole number of at least ${least}, got ${count}`);
  }
}
