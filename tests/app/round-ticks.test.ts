import fc from 'fast-check';
import { expect, test } from 'vitest';
import { logTicks, roundTicks } from '@/app/(bank)/reference/storage-experiments/[id]/_parts/round-ticks';

test.each([
  [720, [0, 200, 400, 600]],
  [100, [0, 20, 40, 60, 80, 100]],
  [7, [0, 2, 4, 6]],
  [0.4, [0, 0.1, 0.2, 0.3, 0.4]],
])('an axis to %d has round figures', (end, ticks) => {
  expect(roundTicks(end)).toEqual(ticks);
});

test('every axis has two to six figures, evenly apart', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 1e5, noNaN: true }), (end) => {
      const ticks = roundTicks(end);
      expect(ticks.length).toBeGreaterThanOrEqual(2);
      expect(ticks.length).toBeLessThanOrEqual(6);
      expect(ticks.at(-1)).toBeLessThanOrEqual(end * (1 + 1e-6));
    }),
    { seed: 20261125 },
  );
});

test.each([
  [20, 300, [20, 50, 100, 200]],
  [3, 8000, [10, 100, 1000]],
  [4, 6, [5]],
])('a logarithmic axis from %d to %d', (from, to, ticks) => {
  const found = logTicks(from, to);
  for (const tick of ticks) expect(found).toContain(tick);
  for (const tick of found) expect(tick >= from && tick <= to).toBe(true);
  expect(found.length).toBeLessThanOrEqual(8);
});
