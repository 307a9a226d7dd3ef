import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spreadLabels } from '@/app/_components/spread-labels';

const ROOM = { height: 15, from: 0, to: 260 };

describe('spreadLabels', () => {
  test('labels that are a height apart stay where they belong', () => {
    expect(spreadLabels([100, 115, 40], ROOM)).toEqual([100, 115, 40]);
  });

  test('labels nearer than a height move apart, half of it each, in the order of what they name', () => {
    expect(spreadLabels([100, 100], ROOM)).toEqual([92.5, 107.5]);
    expect(spreadLabels([101, 99], ROOM)).toEqual([107.5, 92.5]);
  });

  test('one that is pushed onto a third takes it along', () => {
    const [line, now, before] = spreadLabels([120, 100, 104], ROOM) as [number, number, number];
    expect([now, before, line]).toEqual([93, 108, 123]);
  });

  test('none leaves the picture at its foot or its top', () => {
    expect(spreadLabels([259, 258], ROOM)).toEqual([260, 245]);
    expect(spreadLabels([0, 1, 2], ROOM)).toEqual([0, 15, 30]);
  });

  test('never on one another, always inside, and never moved without need', () => {
    const wanted = fc.array(fc.double({ min: 0, max: 260, noNaN: true }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(wanted, (all) => {
        const placed = spreadLabels(all, ROOM);
        const sorted = [...placed].sort((a, b) => a - b);
        for (const [index, place] of sorted.entries()) {
          expect(place).toBeGreaterThanOrEqual(-1e-9);
          expect(place).toBeLessThanOrEqual(260 + 1e-9);
          if (index > 0) expect(place - (sorted[index - 1] ?? 0)).toBeGreaterThanOrEqual(15 - 1e-9);
        }
        for (const [index, want] of all.entries()) {
          const isAlone = all.every((other, at) => at === index || Math.abs(other - want) >= 15 * all.length);
          if (isAlone) expect(placed[index]).toBeCloseTo(want, 9);
        }
      }),
      { seed: 5 },
    );
  });
});
