import { describe, expect, it } from 'vitest';
import { storageLife } from '../../../lib/domain/longevity/storage-life';
import { type MapZone, mapZones, storageLifeCells, zonesAt } from '../../../lib/domain/longevity/storage-life-map';
import { seedOf } from './seed-kinds';

const fall = { initialViability: 0.95, wantedViability: 0.85 };
const bounds = { moistureFromPercent: 2, moistureToPercent: 16, temperatureFromC: -30, temperatureToC: 45 };
const plain = seedOf({ KE: 9.983, CW: 5.896, CH: 0.04, CQ: 0.000428 }, { limit: 4.2 });
const fitted = (range: object) => ({ ...plain, constantsRange: { ...plain.constantsRange, ...range } });
const barley = fitted({ moistureFromPercent: 5.5, moistureToPercent: 24.6, temperatureFromC: 3, temperatureToC: 90 });
const narrow = fitted({ moistureFromPercent: 6, moistureToPercent: 11, temperatureFromC: 10, temperatureToC: 30 });
const wide = fitted({ moistureFromPercent: 3, moistureToPercent: 25, temperatureFromC: 0, temperatureToC: 50 });

describe('storageLifeCells', () => {
  it('is the storage life at every moisture and temperature, row by row of temperature', () => {
    const cells = storageLifeCells(barley, fall, { moistures: [3, 6, 15, 15.5], temperatures: [-18, 20] });
    expect(cells.map((row) => row.map((cell) => cell.temperatureC))).toEqual([Array(4).fill(-18), Array(4).fill(20)]);
    for (const cell of cells.flat()) {
      const life = storageLife(barley, cell, fall);
      expect(cell.days).toBe(life.ok ? life.days : null);
    }
    expect(cells[1]?.[3]).toMatchObject({ days: null, zones: ['too moist'] });
  });

  it('has no figure anywhere for seed that dies when dried', () => {
    const dying = { ...barley, storageBehaviour: 'recalcitrant' as const };
    const cells = storageLifeCells(dying, fall, { moistures: [6, 8], temperatures: [5] });
    expect(cells.flat().map((cell) => cell.days)).toEqual([null, null]);
  });
});

describe('zonesAt', () => {
  it.each<[number, number, MapZone[]]>([
    [8, 20, []],
    [5.5, 3, []],
    [5.4, 3, ['outside the fitted range']],
    [8, 2.9, ['outside the fitted range']],
    [4.1, 20, ['drying gains nothing', 'outside the fitted range']],
    [14, -5, ['outside the fitted range']],
    [14.1, -5, ['freezing may kill', 'outside the fitted range']],
    [14.1, 0, ['outside the fitted range']],
    [15, 20, []],
    [15.1, 20, ['too moist']],
  ])('at %s %% and %s C: %j', (moisturePercent, temperatureC, zones) => {
    expect(zonesAt(barley, { moisturePercent, temperatureC })).toEqual(zones);
  });

  it('takes both ends of the fitted range as within it', () => {
    expect(zonesAt(narrow, { moisturePercent: 11, temperatureC: 30 })).toEqual([]);
    expect(zonesAt(narrow, { moisturePercent: 11.1, temperatureC: 30 })).toEqual(['outside the fitted range']);
    expect(zonesAt(narrow, { moisturePercent: 11, temperatureC: 30.1 })).toEqual(['outside the fitted range']);
  });

  it('puts nothing outside a range that is not known', () => {
    expect(zonesAt(plain, { moisturePercent: 6, temperatureC: -30 })).toEqual([]);
  });

  it('reckons very dry seed at the low limit, so it is within a range that reaches down to there', () => {
    expect(zonesAt(wide, { moisturePercent: 2, temperatureC: 20 })).toEqual(['drying gains nothing']);
  });
});

describe('mapZones', () => {
  it.each([
    ['barley', barley],
    ['narrow', narrow],
    ['wide', wide],
    ['range not known', plain],
  ])('covers exactly what lies in each zone: %s', (_, seed) => {
    const zones = mapZones(seed, bounds);
    for (let moisturePercent = 2.03; moisturePercent < 16; moisturePercent += 0.37) {
      for (let temperatureC = -29.9; temperatureC < 45; temperatureC += 1.3) {
        const drawn = zones.filter(
          (zone) =>
            moisturePercent > zone.moistureFromPercent &&
            moisturePercent < zone.moistureToPercent &&
            temperatureC > zone.temperatureFromC &&
            temperatureC < zone.temperatureToC,
        );
        const names = drawn.map(({ zone }) => zone);
        expect(new Set(names).size, `${moisturePercent} ${temperatureC}`).toBe(names.length);
        expect(names.sort()).toEqual(zonesAt(seed, { moisturePercent, temperatureC }).sort());
      }
    }
  });

  it('keeps within the map', () => {
    for (const zone of mapZones(narrow, bounds)) {
      expect(zone.moistureFromPercent).toBeGreaterThanOrEqual(2);
      expect(zone.moistureToPercent).toBeLessThanOrEqual(16);
      expect(zone.temperatureFromC).toBeGreaterThanOrEqual(-30);
      expect(zone.temperatureToC).toBeLessThanOrEqual(45);
    }
  });
});
