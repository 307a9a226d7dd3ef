import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  approachAt,
  approachReaches,
  fitApproach,
  type Reading,
  squaresThrough,
} from '../../../lib/domain/moisture/approach-fit';
import golden from '../../golden/drying-progress.json';

function readingsOf(wanted: number): Reading[] {
  return golden.weighings.flatMap(({ case: at, hours, weightG }) => (at === wanted ? [{ hours, value: weightG }] : []));
}

test('agrees with R nls, the level free or given: squares to 1e-10, level to 1e-8, rate to 1e-6', () => {
  for (const row of golden.fits) {
    const readings = readingsOf(row.case);
    const free = fitApproach(readings, null);
    const given = fitApproach(readings, row.givenPlateau);
    const why = JSON.stringify({ row, free, given });
    // Ours is never the worse fit: nls stops a little short of the bottom.
    expect(free.squares / row.squares - 1, why).toBeLessThan(1e-10);
    expect(free.squares / row.squares - 1, why).toBeGreaterThan(-1e-10);
    expect(Math.abs(free.plateau / row.plateau - 1), why).toBeLessThan(1e-8);
    expect(Math.abs(free.drop / row.drop - 1), why).toBeLessThan(1e-7);
    expect(Math.abs(free.rate / row.rate - 1), why).toBeLessThan(1e-6);
    expect(Math.abs(given.squares / row.givenSquares - 1), why).toBeLessThan(1e-10);
    expect(Math.abs(given.drop / row.givenDrop - 1), why).toBeLessThan(1e-7);
    expect(Math.abs(given.rate / row.givenRate - 1), why).toBeLessThan(1e-6);
  }
  expect(golden.fits).toHaveLength(6);
});

const curves = fc.record({
  plateau: fc.double({ min: 50, max: 500, noNaN: true }),
  drop: fc.double({ min: 2, max: 60, noNaN: true }),
  rate: fc.double({ min: 0.02, max: 0.3, noNaN: true }),
});
const HOURS = [0, 4, 9, 15, 26, 40];

test('weighings that lie on a curve give that curve back, and a time given by the curve costs no squares', () => {
  fc.assert(
    fc.property(curves, (curve) => {
      const readings = HOURS.map((hours) => ({ hours, value: approachAt(curve, hours) }));
      const fit = fitApproach(readings, null);
      expect(fit.plateau / curve.plateau).toBeCloseTo(1, 5);
      expect(fit.rate / curve.rate).toBeCloseTo(1, 3);
      expect(squaresThrough(readings, { hours: 60, value: approachAt(curve, 60) }, null)).toBeLessThan(1e-10);
      expect(squaresThrough(readings, { hours: 60, value: approachAt(curve, 60) }, curve.plateau)).toBeLessThan(1e-10);
    }),
    { seed: 20260315, numRuns: 40 },
  );
});

test('a condition never makes the fit better', () => {
  for (const row of golden.fits) {
    const readings = readingsOf(row.case);
    const { squares, plateau } = fitApproach(readings, null);
    const slack = squares * 1e-9;
    expect(fitApproach(readings, plateau - 1).squares).toBeGreaterThan(squares - slack);
    for (const hours of [1, 20, 70, 500]) {
      expect(squaresThrough(readings, { hours, value: plateau + 2 }, null)).toBeGreaterThan(squares - slack);
    }
  }
});

test('the time found is the time at which the curve has that value; below its level there is none', () => {
  const curve = { plateau: 100, drop: 20, rate: 0.05 };
  expect(approachAt(curve, approachReaches(curve, 105) ?? Number.NaN)).toBeCloseTo(105, 10);
  expect(approachReaches(curve, 100)).toBeNull();
  expect(approachReaches(curve, 99)).toBeNull();
});

test('readings on a straight line are called straight', () => {
  const line = HOURS.map((hours) => ({ hours, value: 500 - 0.5 * hours }));
  expect(fitApproach(line, null).straight).toBe(true);
  const bent = HOURS.map((hours) => ({ hours, value: approachAt({ plateau: 460, drop: 40, rate: 0.03 }, hours) }));
  expect(fitApproach(bent, null).straight).toBe(false);
});

test('refuses too few readings, and readings out of order or at one time', () => {
  const three = [0, 1, 2].map((hours) => ({ hours, value: 10 - hours }));
  expect(() => fitApproach(three.slice(0, 2), null)).toThrow(/at least 3, got 2/);
  expect(() => fitApproach(three.slice(0, 1), 5)).toThrow(/at least 2, got 1/);
  expect(() => fitApproach([...three].reverse(), null)).toThrow(/sorted/);
  expect(() => squaresThrough([...three, { hours: 2, value: 9 }], { hours: 3, value: 9 }, null)).toThrow(/distinct/);
});
