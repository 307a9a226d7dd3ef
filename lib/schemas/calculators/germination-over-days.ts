import { z } from 'zod';
import type { DishCounts, IntervalCount } from '../../domain/germination/time-course/dish-counts';
import { blankToUndefined, optionalField } from '../field-schemas';
import { SEED_COUNT } from '../limits';
import { numberList } from '../number-list';
import { type DailyCounts, MOST_DISHES, readDailyCounts } from './daily-counts';
import { oneOf } from './question-parts';
import { readWith } from './written-lines';

const COUNTS_ARE = ['new', 'total'] as const;
type CountsAre = (typeof COUNTS_ARE)[number];

/** 200 inspections of 20 dishes fit. */
const LONGEST_TEXT = 20_000;

const dailyCounts = z.preprocess(
  blankToUndefined,
  z
    .string({ error: 'Write a line for each inspection: the day, then the seeds that germinated.' })
    .max(LONGEST_TEXT, `Shorten this to ${LONGEST_TEXT} characters.`)
    .transform(readWith(readDailyCounts)),
);

/** Germination over days: what its calculator is asked. */
export const germinationOverDaysSchema = z
  .object({
    counts: dailyCounts,
    seeds: numberList({ min: 1, max: SEED_COUNT.max, most: MOST_DISHES }, 'numbers of seeds', true),
    countsAre: optionalField(oneOf(COUNTS_ARE)),
  })
  .superRefine(({ counts, seeds, countsAre }, context) => {
    const dishes = dishesOf(counts, seeds, countsAre ?? 'new');
    if (!dishes.ok) context.addIssue({ code: 'custom', path: [dishes.field], message: dishes.message });
  });

/**
 * Dishes from counts by day and the seeds set.
 *
 * A dish is followed from one day on which it was looked at to the next, so that a day missed makes its stretch longer; a
 * dish that is not looked at any more was lost on its last day.
 *
 * @param daily      from readDailyCounts
 * @param seeds      seeds set in each dish, one number a dish, or one for all
 * @param countsAre  'new': germinated since the inspection before; 'total': germinated so far
 * @returns the dishes, or what is wrong and in which field
 * Checked in tests/schemas/germination-over-days.test.ts
 */
export function dishesOf(
  daily: DailyCounts,
  seeds: readonly number[],
  countsAre: CountsAre,
): { ok: true; dishes: DishCounts[] } | { ok: false; field: 'counts' | 'seeds'; message: string } {
  if (seeds.length !== 1 && seeds.length !== daily.dishes) {
    const message = `${seeds.length} numbers of seeds here, but counts of ${daily.dishes} ${daily.dishes === 1 ? 'dish' : 'dishes'}: write one number for all, or one for each.`;
    return { ok: false, field: 'seeds', message };
  }
  const dishes: DishCounts[] = [];
  for (let dish = 0; dish < daily.dishes; dish++) {
    const set = seeds[dish] ?? seeds[0] ?? 0;
    const name = daily.dishes === 1 ? '' : ` in dish ${dish + 1}`;
    const inspections: IntervalCount[] = [];
    let fromDay = 0;
    let total = 0;
    for (const { number, day, counts } of daily.lines) {
      const count = counts[dish];
      if (count === null || count === undefined || day === 0) continue;
      const germinated = countsAre === 'total' ? count - total : count;
      if (germinated < 0) {
        const message = `Line ${number}: ${count} so far${name}, but ${total} before. A running total cannot fall: are these the newly germinated?`;
        return { ok: false, field: 'counts', message };
      }
      total += germinated;
      if (total > set) {
        const message = `Line ${number}: ${total} have germinated${name} by then, but ${set} were set. Check both, or whether these are running totals.`;
        return { ok: false, field: 'counts', message };
      }
      inspections.push({ fromDay, toDay: day, germinated });
      fromDay = day;
    }
    if (inspections.length === 0) {
      return { ok: false, field: 'counts', message: `No inspection after day 0${name}: write at least one.` };
    }
    dishes.push({ seeds: set, inspections });
  }
  return { ok: true, dishes };
}
