import { expect, test } from 'vitest';
import { dryingTooFast } from '../../../lib/domain/moisture/drying-pace';

/** Seed with 80 g of dry matter at these moistures. */
const at = (hours: number, moisturePercent: number) => ({ hours, weightG: 8000 / (100 - moisturePercent) });
const pace = (weighings: ReturnType<typeof at>[], family = 'Amaryllidaceae') =>
  dryingTooFast({ weighings, startMoisturePercent: 20, family });

test('a point an hour is the most for leek, half a point for beans', () => {
  expect(pace([at(0, 20), at(4, 16.1)])).toBeNull();
  expect(pace([at(0, 20), at(4, 15.9)])?.pointsPerHour).toBeCloseTo(1.025, 10);
  expect(pace([at(0, 20), at(4, 18.1)], 'Fabaceae')).toBeNull();
  expect(pace([at(0, 20), at(4, 17.9)], 'Fabaceae')?.limitPointsPerHour).toBe(0.5);
});

test('the fastest stretch is told, whatever the order of weighings; less than half an hour is not judged', () => {
  const weighings = [at(10, 12), at(0, 20), at(2, 16), at(4, 14), at(10.2, 11)];
  expect(pace(weighings)).toMatchObject({ fromHours: 0, toHours: 2 });
  expect(pace([at(0, 20), at(0.4, 18)])).toBeNull();
});

test('seed that takes up water is not drying too fast, and no weighing is no answer', () => {
  expect(pace([at(0, 20), at(1, 25)])).toBeNull();
  expect(pace([])).toBeNull();
  expect(() => pace([at(0, 20), { hours: 1, weightG: 0 }])).toThrow(RangeError);
  expect(() => dryingTooFast({ weighings: [], startMoisturePercent: 100, family: 'Poaceae' })).toThrow(RangeError);
});
