import { describe, expect, it } from 'vitest';
import { climateExcursions } from '@/lib/domain/longevity/climate-excursions';
import { storeClimate } from '@/lib/domain/longevity/store-climate';

const CONSTANTS = { CH: 0.0329, CQ: 0.000478 };
const FIRST_DAY = 19_000;

/** Four readings a day at these daily temperatures. */
function climateOf(dailyTemperatures: number[]) {
  const epochSeconds: number[] = [];
  const temperatureC: number[] = [];
  dailyTemperatures.forEach((temperature, day) => {
    for (let quarter = 0; quarter < 4; quarter += 1) {
      epochSeconds.push((FIRST_DAY + day) * 86_400 + quarter * 21_600);
      temperatureC.push(temperature);
    }
  });
  return storeClimate(
    { epochSeconds: Float64Array.from(epochSeconds), temperatureC: Float64Array.from(temperatureC) },
    { temperatureC: 4 },
  );
}

const days = (count: number, temperature: number) => Array<number>(count).fill(temperature);
const find = (temperatures: number[]) =>
  climateExcursions(climateOf(temperatures), CONSTANTS, FIRST_DAY, FIRST_DAY + temperatures.length);

describe('excursions of a store', () => {
  it('finds the weeks in which a fridge stood warm', () => {
    const [failure, ...others] = find([...days(30, 4), ...days(21, 24), ...days(30, 4)]);
    expect(others).toEqual([]);
    expect(Math.abs((failure?.fromDay ?? 0) - (FIRST_DAY + 30))).toBeLessThanOrEqual(1);
    expect(Math.abs((failure?.toDay ?? 0) - (FIRST_DAY + 51))).toBeLessThanOrEqual(1);
    // 10^(0.0329 * 20 + 0.000478 * (24^2 - 4^2)) = 8.4 times
    expect(failure?.timesFaster).toBeGreaterThan(7.5);
    expect(failure?.timesFaster).toBeLessThan(8.6);
  });

  it('leaves a warm day and an ordinary summer alone', () => {
    expect(find([...days(20, 4), ...days(1, 25), ...days(20, 4)])).toEqual([]);
    expect(find([...days(20, 4), ...days(60, 9), ...days(20, 4)])).toEqual([]);
  });

  it('counts two failures with a good day between as one', () => {
    expect(find([...days(10, 4), ...days(5, 25), ...days(2, 4), ...days(5, 25), ...days(10, 4)])).toHaveLength(1);
  });

  it('counts failures a month apart as two', () => {
    expect(find([...days(10, 4), ...days(5, 25), ...days(30, 4), ...days(5, 25), ...days(10, 4)])).toHaveLength(2);
  });
});
