import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundTicks, tickValues } from '@/app/_format/ticks';

describe('figures of an axis', () => {
  it.each([
    [0, 100, [0, 20, 40, 60, 80, 100]],
    [37, 96, [40, 60, 80]],
    [0, 7, [0, 2, 4, 6]],
    [0, 0.35, [0, 0.1, 0.2, 0.3]],
  ])('from %f to %f are round', (from, to, ticks) => {
    expect(roundTicks(from, to)).toEqual(ticks);
  });

  it('are whole where days of a calendar are wanted, and none stands outside', () => {
    expect(roundTicks(0.4, 4.2, 3, true)).toEqual([2, 4]);
    expect(roundTicks(0.3, 0.8, 8, true)).toEqual([]);
  });
});

describe('figures that cover an axis', () => {
  it('round figures that cover the range', () => {
    expect(tickValues(5.2, 12, 5)).toEqual([4, 6, 8, 10, 12]);
    expect(tickValues(0, 1, 5)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
  });

  it('days of a calendar are whole, also over half a day', () => {
    expect(tickValues(0.3, 0.8, 8, true)).toEqual([0, 1]);
    expect(tickValues(0.4, 4.2, 3, true)).toEqual([0, 2, 4, 6]);
  });

  it('the ends lie at or beyond the data, and never more gaps than asked for but for the ends', () => {
    const value = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(
        value,
        fc.double({ min: 0.01, max: 500, noNaN: true }),
        fc.integer({ min: 2, max: 10 }),
        (from, span, about) => {
          const ticks = tickValues(from, from + span, about);
          expect(ticks[0]).toBeLessThanOrEqual(from + 1e-6);
          expect(ticks.at(-1)).toBeGreaterThanOrEqual(from + span - 1e-6);
          expect(ticks.length).toBeLessThanOrEqual(about + 3);
        },
      ),
      { seed: 20260322 },
    );
  });
});
