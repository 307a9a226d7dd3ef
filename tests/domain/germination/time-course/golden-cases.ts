import type { DishCounts } from '../../../../lib/domain/germination/time-course/dish-counts';
import { goldenRows } from '../../../support/golden-table';

interface CaseRow {
  name: string;
  seeds: number[];
  dish: number[];
  fromDay: number[];
  /** null stands for Infinity */
  toDay: (number | null)[];
  germinated: number[];
}

export const GOLDEN = 'germination-time-course';

/** The dishes of one case of the golden table. */
export function goldenDishes(name: string): DishCounts[] {
  const row = goldenRows<CaseRow>(GOLDEN, 'cases').find((one) => one.name === name);
  if (!row) throw new Error(`no case is called ${name}`);
  return row.seeds.map((seeds, i) => ({
    seeds,
    inspections: row.dish.flatMap((dish, line) =>
      dish === i + 1
        ? [
            {
              fromDay: row.fromDay[line] ?? 0,
              toDay: row.toDay[line] ?? Number.POSITIVE_INFINITY,
              germinated: row.germinated[line] ?? 0,
            },
          ]
        : [],
    ),
  }));
}

/** One dish from days and counts, the first stretch beginning at the sowing. */
export function dish(seeds: number, counts: readonly (readonly [day: number, germinated: number])[]): DishCounts {
  return {
    seeds,
    inspections: counts.map(([toDay, germinated], i) => ({ fromDay: counts[i - 1]?.[0] ?? 0, toDay, germinated })),
  };
}
