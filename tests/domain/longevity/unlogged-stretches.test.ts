import fc from 'fast-check';
import { expect, it } from 'vitest';
import { climateCoverage } from '@/lib/domain/longevity/climate-coverage';
import { storeClimate } from '@/lib/domain/longevity/store-climate';
import { unloggedStretches } from '@/lib/domain/longevity/unlogged-stretches';

const DAY = 86_400;
const climateAt = (hours: number[]) =>
  storeClimate(
    {
      epochSeconds: Float64Array.from(hours, (hour) => 20_000 * DAY + hour * 3600),
      temperatureC: new Float64Array(hours.length).fill(4),
    },
    { temperatureC: 4 },
  );

it('leaves out exactly the days that count as logged, wherever readings stop and begin again', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 1, max: 120 }), { maxLength: 12 }),
      fc.integer({ min: -5, max: 40 }),
      fc.integer({ min: 0, max: 40 }),
      (steps, from, length) => {
        let hour = 0;
        const climate = climateAt(
          steps.map((step) => {
            hour += step;
            return hour;
          }),
        );
        const stretches = unloggedStretches(climate, (20_000 + from) * DAY, (20_000 + from + length) * DAY);
        const days = stretches.reduce((sum, s) => sum + (s.toEpochSeconds - s.fromEpochSeconds) / DAY, 0);
        const { daysAssumed } = climateCoverage(climate, 20_000 + from, 20_000 + from + length);
        expect(Math.abs(days - daysAssumed)).toBeLessThan(1e-9);
        stretches.reduce((end, s) => {
          expect(s.fromEpochSeconds).toBeGreaterThanOrEqual(end);
          return s.toEpochSeconds;
        }, -Infinity);
      },
    ),
    { seed: 9, numRuns: 200 },
  );
});

it('is the whole stretch for a store without a logger', () => {
  expect(unloggedStretches(climateAt([]), 10, 20)).toEqual([{ fromEpochSeconds: 10, toEpochSeconds: 20 }]);
  expect(() => unloggedStretches(climateAt([]), 20, 10)).toThrow(RangeError);
});
