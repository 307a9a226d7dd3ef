import type { TrayView } from '@/app/bench/_store/bench-view';
import { dishStates, unready } from '@/lib/domain/germination/bench/dish-state';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import type { BenchCount } from '@/lib/schemas/bench-wire';

/** A count of dish 'd1', made by Ann, that replaces nothing, unless told otherwise. */
export function benchCount(
  id: string,
  on: string,
  found: Partial<ClassCounts> | null,
  overrides: Partial<BenchCount> = {},
): BenchCount {
  return {
    id,
    dishId: 'd1',
    on,
    found: found && { ...NOTHING_FOUND, ...found },
    replaces: [],
    places: null,
    deviceId: 'phone',
    madeAt: `${on}T09:00:00Z`,
    byName: 'Ann',
    ...overrides,
  };
}

/** Dish 1 with these counts. */
export function dishWith(seeds: number, ...counts: BenchCount[]) {
  const [state] = dishStates([{ id: 'd1', position: 1, seeds }], counts);
  if (!state) throw new Error('no dish');
  return state;
}

/** A tray with one dish of 50 seeds that is due today, as the bench sees it. */
export function trayInView(
  number: string,
  overrides: Partial<TrayView> = {},
  tray: Partial<TrayView['tray']> = {},
): TrayView {
  const dishes = overrides.dishes ?? [dishWith(50)];
  return {
    tray: {
      id: `tray-${number}`,
      number,
      lotNumber: 'L-2020-001',
      accessionName: 'Skerry Winter',
      cropName: 'leek',
      place: null,
      setOn: '2026-11-18',
      firstCountOn: '2026-11-23',
      finalCountOn: '2026-12-02',
      countEveryDays: null,
      temperatures: '20',
      substrate: null,
      light: false,
      hardSeedOccurs: false,
      treatment: null,
      dishes: dishes.map(({ dish }) => dish),
      counts: [],
      notes: [],
      ...tray,
    },
    dishes,
    next: { on: '2026-11-25', final: false, daysLate: 0 },
    countedToday: false,
    unready: unready(dishes),
    waiting: 0,
    photosWaiting: [],
    ...overrides,
  };
}
