/** Stores such as a large bank has, each with a logger: eight kinds, and as many of each as are asked for. */
import type { ClimateStory, StoreStory } from './story';

export interface LargeStoreStory extends Omit<StoreStory, 'key' | 'inside' | 'movedInto' | 'climate'> {
  targetTemperatureC: number;
  climate: Omit<ClimateStory, 'yearsLogged'>;
}

function store(
  name: string,
  kind: StoreStory['kind'],
  targetTemperatureC: number,
  targetHumidityPercent: number | undefined,
  seasonC: number,
): LargeStoreStory {
  return {
    name,
    kind,
    targetTemperatureC,
    targetHumidityPercent,
    climate: {
      everyHours: 1,
      temperature: { mean: targetTemperatureC, season: seasonC, hourly: 0.1 + seasonC / 6, wander: 0.5 },
      humidity:
        targetHumidityPercent === undefined ? null : { mean: targetHumidityPercent / 100, season: 0.02, wander: 0.03 },
      mishaps: [],
      gaps: [],
    },
  };
}

export const LARGE_STORES: readonly LargeStoreStory[] = [
  store('Freezer 1', 'freezer', -18, undefined, 0.3),
  store('Freezer 2', 'freezer', -18, undefined, 0.3),
  store('Freezer 3', 'freezer', -20, undefined, 0.2),
  store('Fridge 1', 'fridge', 4, 40, 0.4),
  store('Fridge 2', 'fridge', 5, 45, 0.5),
  store('Cold room', 'room', 10, 30, 0.8),
  store('Cellar', 'room', 12, 52, 2.5),
  store('Dry cabinet', 'cabinet', 15, 18, 0.6),
];

/**
 * @param count  how many stores, >= 1: the eight, then eight more like them with a number to their names, and so on
 */
export function largeStores(count: number): LargeStoreStory[] {
  return Array.from({ length: count }, (_, index) => {
    const story = LARGE_STORES[index % LARGE_STORES.length] as LargeStoreStory;
    const round = Math.floor(index / LARGE_STORES.length);
    return round === 0 ? story : { ...story, name: `${story.name}, building ${round + 1}` };
  });
}
