import { expect, test } from 'vitest';
import { logTicks } from '@/app/(bank)/reference/storage-experiments/[id]/_parts/log-ticks';

test.each([
  ['within two powers, with figures between', 20, 300, [20, 50, 100, 200]],
  ['over many, the powers alone', 3, 8000, [10, 100, 1000]],
  ['within one', 4, 6, [5]],
  ['below one', 0.15, 2, [0.2, 0.5, 1, 2]],
])('a logarithmic axis has round figures: %s', (_, from, to, ticks) => {
  expect(logTicks(from, to)).toEqual(ticks);
});
