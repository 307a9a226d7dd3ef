import { describe, expect, it } from 'vitest';
import { coolerWay, drierWay, USUAL_STORES_C } from '../../../lib/domain/longevity/other-ways';
import { moistestThatReaches, warmestThatReaches } from '../../../lib/domain/longevity/reach-goal';
import { seedOf } from './seed-kinds';

const onion = seedOf({ KE: 6.975, CW: 3.47, CH: 0.04, CQ: 0.000428 }, { limit: 3.9 });
const years = (count: number) => ({ initialViability: 0.95, wantedViability: 0.85, days: count * 365.25 });

describe('coolerWay', () => {
  it('is the warmest usual store in which some moisture reaches the goal', () => {
    const goal = years(20);
    expect(moistestThatReaches(onion, 25, goal).ok).toBe(false);
    const way = coolerWay(onion, 25, goal);
    if (!way) throw new Error('a way was expected');
    for (const store of USUAL_STORES_C) {
      if (store < 25 && store > way.temperatureC) expect(moistestThatReaches(onion, store, goal).ok).toBe(false);
    }
    expect(moistestThatReaches(onion, way.temperatureC, goal)).toMatchObject({
      ok: true,
      moisturePercent: way.moisturePercent,
    });
  });

  it('is never as warm as the store that was asked about, and none where nothing helps', () => {
    expect(coolerWay(onion, 5, years(1))?.temperatureC).toBe(-18);
    expect(coolerWay(onion, -18, years(1))).toBeNull();
    expect(coolerWay(onion, 25, years(1e6))).toBeNull();
  });
});

describe('drierWay', () => {
  it('is the moistest whole percent below at which a usual store reaches the goal', () => {
    const goal = years(60);
    expect(warmestThatReaches(onion, 12, goal).ok).toBe(false);
    const way = drierWay(onion, 12, goal);
    if (!way) throw new Error('a way was expected');
    expect(Number.isInteger(way.moisturePercent)).toBe(true);
    expect(warmestThatReaches(onion, way.moisturePercent, goal)).toMatchObject({
      ok: true,
      temperatureC: way.temperatureC,
    });
    expect(way.temperatureC).toBeGreaterThanOrEqual(-18);
    // A percent moister only a store colder than any usual one would do.
    const moister = warmestThatReaches(onion, way.moisturePercent + 1, goal);
    expect(moister.ok && moister.temperatureC).toBeLessThan(-18);
  });

  it('begins below the moisture asked about, at 15 % at the most, and ends at the low limit', () => {
    expect(drierWay(onion, 10, years(0.1))?.moisturePercent).toBe(9);
    expect(drierWay(onion, 9.5, years(0.1))?.moisturePercent).toBe(9);
    expect(drierWay(onion, 40, years(0.01))?.moisturePercent).toBe(15);
    expect(drierWay(onion, 4, years(0.1))).toBeNull();
    expect(drierWay(onion, 12, years(1e6))).toBeNull();
  });
});
