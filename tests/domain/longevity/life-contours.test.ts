import { describe, expect, it } from 'vitest';
import { lifeContours } from '../../../lib/domain/longevity/life-contours';
import { warmestThatReaches } from '../../../lib/domain/longevity/reach-goal';
import { storageLife } from '../../../lib/domain/longevity/storage-life';
import golden from '../../golden/storage-life.json';
import { seedOf } from './seed-kinds';

const fall = { initialViability: 0.95, wantedViability: 0.85 };
const bounds = { moistureFromPercent: 2, moistureToPercent: 16, temperatureFromC: -30, temperatureToC: 45 };
const LIVES = [1, 2, 5, 10, 20, 50, 100, 200];
const seeds = golden.seeds.map((row) => ({ crop: row.crop, seed: seedOf(row, row) }));
const barley = seedOf({ KE: 9.983, CW: 5.896, CH: 0.04, CQ: 0.000428 }, { limit: 4.2 });

/** Where a drawn line stands at a moisture, between the two points beside it. */
function temperaturesAt(line: { moisturePercent: number; temperatureC: number }[], moisturePercent: number): number[] {
  return line.slice(1).flatMap((to, index) => {
    const from = line[index] ?? to;
    const share = (moisturePercent - from.moisturePercent) / (to.moisturePercent - from.moisturePercent);
    return share >= 0 && share < 1 ? [from.temperatureC + share * (to.temperatureC - from.temperatureC)] : [];
  });
}

describe('lifeContours', () => {
  it.each(seeds)('every point of every line has the storage life it stands for, within 0.1 %: $crop', ({ seed }) => {
    const contours = lifeContours(seed, fall, bounds, LIVES);
    expect(contours.map(({ years }) => years)).toEqual(LIVES);
    for (const { years, lines } of contours) {
      for (const point of lines.flat()) {
        const life = storageLife(seed, point, fall);
        expect(life.ok && Math.abs(life.days / 365.25 / years - 1), JSON.stringify(point)).toBeLessThan(0.001);
      }
    }
  });

  it.each(seeds)(
    'lines are whole: they meet the equation at every moisture where it stays on the map: $crop',
    ({ seed }) => {
      for (const { years, lines } of lifeContours(seed, fall, bounds, LIVES)) {
        for (let moisturePercent = 2.53; moisturePercent < 14; moisturePercent += 0.5) {
          const reach = warmestThatReaches(seed, moisturePercent, { ...fall, days: years * 365.25 });
          if (!reach.ok || reach.isAtLimit) continue;
          const drawn = lines.flatMap((line) => temperaturesAt(line, moisturePercent));
          expect(drawn, `${years} years at ${moisturePercent} %`).toHaveLength(1);
          expect(Math.abs((drawn[0] ?? 999) - reach.temperatureC)).toBeLessThan(0.05);
        }
      }
    },
  );

  it('runs from edge to edge in one line, and never along the edge', () => {
    for (const { lines } of lifeContours(barley, fall, bounds, [1, 10])) {
      expect(lines).toHaveLength(1);
      const line = lines[0] ?? [];
      const cold = line.filter((point) => point.temperatureC <= -30 || point.moisturePercent >= 15);
      expect(cold.length).toBeLessThanOrEqual(1);
    }
  });

  it('runs level where drying gains nothing all over the map', () => {
    const seed = seedOf(barley.constants, { limit: 15 });
    const reach = warmestThatReaches(seed, 10, { ...fall, days: 0.2 * 365.25 });
    const [contour] = lifeContours(seed, fall, bounds, [0.2]);
    const points = contour?.lines.flat() ?? [];
    expect(points.length).toBeGreaterThan(1);
    for (const point of points)
      expect(reach.ok && Math.abs(point.temperatureC - reach.temperatureC)).toBeLessThan(0.05);
  });

  it('has no line for a life that does not occur on the map', () => {
    expect(lifeContours(barley, fall, bounds, [1e9])).toEqual([{ years: 1e9, lines: [] }]);
    expect(() => lifeContours(barley, fall, bounds, [0])).toThrow(/years/);
  });
});
