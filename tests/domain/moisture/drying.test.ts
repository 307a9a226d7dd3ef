import fc from 'fast-check';
import { expect, test } from 'vitest';
import { moistureByWeight, targetWeight } from '../../../lib/domain/moisture/drying';

test.each([
  // Derived from constant dry matter.
  [1000, 14, 6, 914.894],
  [500, 12.5, 7, 470.43],
])('%d g dried from %d %% to %d %% weighs %d g', (weight, moisturePercent, targetMoisturePercent, expected) => {
  const reached = targetWeight({ weight, moisturePercent, targetMoisturePercent });
  expect(Math.abs(reached - expected)).toBeLessThanOrEqual(0.0005);
});

const moistures = fc.double({ min: 0, max: 60, noNaN: true });

test('dry matter neither appears nor disappears', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 5000, noNaN: true }), moistures, moistures, (weight, now, target) => {
      const reached = targetWeight({ weight, moisturePercent: now, targetMoisturePercent: target });
      const dryBefore = weight * (1 - now / 100);
      expect(Math.abs((reached * (1 - target / 100)) / dryBefore - 1)).toBeLessThan(1e-12);
    }),
    { seed: 20260106 },
  );
});

test('weighing at the target weight reads back the target moisture', () => {
  const weightNow = targetWeight({ weight: 500, moisturePercent: 12.5, targetMoisturePercent: 7 });
  const reading = moistureByWeight({ weightBefore: 500, moisturePercentBefore: 12.5, weightNow });
  expect(reading.ok && reading.moisturePercent).toBeCloseTo(7, 10);
});

test('seed lighter than its own dry matter was spilled or mismeasured: no moisture is given', () => {
  expect(moistureByWeight({ weightBefore: 100, moisturePercentBefore: 10, weightNow: 89.9 })).toEqual({
    ok: false,
    reason: 'lighter-than-its-dry-matter',
  });
});

test('refuses weights and moistures outside their range', () => {
  expect(() => targetWeight({ weight: 0, moisturePercent: 10, targetMoisturePercent: 5 })).toThrow(/weight.*got 0/);
  expect(() => targetWeight({ weight: 10, moisturePercent: 100, targetMoisturePercent: 5 })).toThrow(/got 100/);
  expect(() => targetWeight({ weight: 10, moisturePercent: 10, targetMoisturePercent: -1 })).toThrow(/target/);
  expect(() => moistureByWeight({ weightBefore: 10, moisturePercentBefore: 10, weightNow: 0 })).toThrow(/weightNow/);
});
