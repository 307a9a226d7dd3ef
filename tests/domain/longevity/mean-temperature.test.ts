import { expect, it } from 'vitest';
import { meanTemperatureC } from '@/lib/domain/longevity/mean-temperature';
import { storeClimate } from '@/lib/domain/longevity/store-climate';

const DAY = 86_400;
const FIRST = 20_000;
/** -18 at midnight, -6 at noon: -12 on the mean, for ten days. */
const readings = Array.from({ length: 21 }, (_, half) => [FIRST + half / 2, half % 2 === 0 ? -18 : -6] as const);
const climate = storeClimate(
  {
    epochSeconds: Float64Array.from(readings, ([day]) => day * DAY),
    temperatureC: Float64Array.from(readings, ([, t]) => t),
  },
  { temperatureC: -20 },
);

it('is that of straight lines between readings, below freezing too', () => {
  expect(meanTemperatureC(climate, FIRST, FIRST + 1)).toBeCloseTo(-12, 9);
  expect(meanTemperatureC(climate, FIRST + 2, FIRST + 9)).toBeCloseTo(-12, 9);
});

it('takes the target for days that were not logged', () => {
  expect(meanTemperatureC(climate, FIRST - 30, FIRST)).toBeCloseTo(-20, 9);
  expect(meanTemperatureC(climate, FIRST - 10, FIRST + 10)).toBeCloseTo(-16, 9);
});

it('has none for no day', () => {
  expect(() => meanTemperatureC(climate, FIRST, FIRST)).toThrow(/meanTemperatureC/);
});
