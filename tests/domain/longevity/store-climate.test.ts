import { describe, expect, it } from 'vitest';
import { storeClimate } from '../../../lib/domain/longevity/store-climate';

const at = (hours: number[], temperatures: number[], humidity?: number[]) => ({
  epochSeconds: Float64Array.from(hours, (hour) => hour * 3600),
  temperatureC: Float64Array.from(temperatures),
  ...(humidity ? { relativeHumidity: Float64Array.from(humidity) } : {}),
});
const target = { temperatureC: 5, relativeHumidity: 0.3 };

describe('storeClimate', () => {
  it('reports a gap longer than 48 hours, and none at 48', () => {
    expect(storeClimate(at([0, 48], [5, 5]), target).gaps).toEqual([]);
    expect(storeClimate(at([0, 49], [5, 5]), target).gaps).toEqual([
      { fromEpochSeconds: 0, toEpochSeconds: 49 * 3600, days: 49 / 24 },
    ]);
  });

  it('spans the UTC days that hold a reading, before 1970 too', () => {
    expect(storeClimate(at([-1, 0], [5, 5]), target)).toMatchObject({ firstDay: -1, endDay: 1 });
    expect(storeClimate(at([], []), target)).toMatchObject({ firstDay: 0, endDay: 0 });
  });

  it.each([
    ['times that do not ascend', at([2, 2], [5, 5])],
    ['a missing temperature', at([1, 2], [5])],
    ['a temperature that is not a number', at([1], [Number.NaN])],
    ['a humidity in percent', at([1], [5], [30])],
  ])('refuses %s', (_what, readings) => {
    expect(() => storeClimate(readings, target)).toThrow(RangeError);
  });

  it('lets a humidity be missing', () => {
    expect(() => storeClimate(at([1], [5], [Number.NaN]), target)).not.toThrow();
  });

  it('refuses a target humidity in percent and a gap of no hours', () => {
    expect(() => storeClimate(at([], []), { temperatureC: 5, relativeHumidity: 30 })).toThrow(RangeError);
    expect(() => storeClimate(at([], []), target, { maximumGapHours: 0 })).toThrow(RangeError);
  });
});
