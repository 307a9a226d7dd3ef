import { describe, expect, it } from 'vitest';
import { roundTicks } from '../../app/(bank)/reference/_parts/ticks';

describe('figures of an axis', () => {
  it.each([
    [0, 100, [0, 20, 40, 60, 80, 100]],
    [37, 96, [40, 60, 80]],
    [0, 7, [0, 2, 4, 6]],
    [0, 0.35, [0, 0.1, 0.2, 0.3]],
  ])('from %f to %f are round', (from, to, ticks) => {
    expect(roundTicks(from, to)).toEqual(ticks);
  });
});
