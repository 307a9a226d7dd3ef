import { describe, expect, test } from 'vitest';
import { derivedToleratedRange, replicateTolerance } from '../../../lib/domain/germination/replicate-tolerance';
import { goldenRows } from '../../support/golden-table';

/** Replicates of one size whose counts are as equal as they can be, with this many normal in all. */
function evenly(seeds: number, replicates: number, normal: number) {
  return Array.from({ length: replicates }, (_, i) => ({
    seeds,
    normal: Math.floor(normal / replicates) + (i < normal % replicates ? 1 : 0),
  }));
}

/** Maximum range for 4 replicates of 100 as the regulation prints it, by runs of the mean: 7 CFR 201.55(a), 2015. */
const FOUR_OF_100: [from: number, to: number, range: number][] = [
  [99, 99, 5],
  [98, 98, 6],
  [97, 97, 7],
  [96, 96, 8],
  [95, 95, 9],
  [93, 94, 10],
  [91, 92, 11],
  [89, 90, 12],
  [87, 88, 13],
  [84, 86, 14],
  [81, 83, 15],
  [78, 80, 16],
  [73, 77, 17],
  [67, 72, 18],
  [56, 66, 19],
  [51, 55, 20],
];

/** The same for 2 replicates of 100. */
const TWO_OF_100: [from: number, to: number, range: number][] = [
  [96, 97, 6],
  [95, 95, 7],
  [93, 94, 8],
  [90, 92, 9],
  [88, 89, 10],
  [84, 87, 11],
  [81, 83, 12],
  [76, 80, 13],
  [69, 75, 14],
  [55, 68, 15],
  [51, 54, 16],
];

describe('four or two replicates of 100 have the published range', () => {
  test.each([
    [4, FOUR_OF_100],
    [2, TWO_OF_100],
  ] as const)('%i replicates, at every mean and its mirror image', (replicates, runs) => {
    for (const [from, to, toleratedRange] of runs) {
      for (let mean = from; mean <= to; mean++) {
        const expected = { ok: true, toleratedRange, basis: 'published' };
        expect(replicateTolerance(evenly(100, replicates, mean * replicates)), `mean ${mean}`).toEqual(expected);
        const mirrored = 101 - mean;
        expect(replicateTolerance(evenly(100, replicates, mirrored * replicates)), `mean ${mirrored}`).toEqual(
          expected,
        );
      }
    }
  });

  test('the mean is rounded before the table is read', () => {
    // 355 of 400 is 88.75 %, read at 89: 12 points; 354 of 400 is 88.5 %, a half, read at 89; 353 at 88: 13 points.
    expect(replicateTolerance(evenly(100, 4, 354))).toMatchObject({ toleratedRange: 12 });
    expect(replicateTolerance(evenly(100, 4, 353))).toMatchObject({ toleratedRange: 13 });
  });

  test('where the table is blank the range is derived', () => {
    for (const replicates of [evenly(100, 4, 399), evenly(100, 4, 4), evenly(100, 2, 198), evenly(100, 2, 196)]) {
      expect(replicateTolerance(replicates)).toMatchObject({ ok: true, basis: 'derived' });
    }
  });

  test('the derivation never differs from the table by more than a point', () => {
    for (const [replicates, runs] of [
      [4, FOUR_OF_100],
      [2, TWO_OF_100],
    ] as const) {
      for (const [from, to, published] of runs) {
        for (let mean = from; mean <= to; mean++) {
          const derived = derivedToleratedRange(evenly(100, replicates, mean * replicates));
          expect(Math.abs(derived - published), `${replicates} at ${mean}: ${derived}`).toBeLessThanOrEqual(1);
        }
      }
    }
  });
});

describe('every other shape has a derived range', () => {
  test('neither three nor eight of 100, nor four of 99, read the table', () => {
    for (const replicates of [evenly(100, 3, 255), evenly(100, 8, 680), evenly(99, 4, 340)]) {
      expect(replicateTolerance(replicates)).toMatchObject({ ok: true, basis: 'derived' });
    }
  });

  test('agrees with R', () => {
    for (const row of goldenRows<{ trials: number[]; normal: number[]; toleratedRange: number }>(
      'replicate-tolerance',
      'tolerances',
    )) {
      const replicates = row.trials.map((seeds, i) => ({ seeds, normal: row.normal[i] ?? Number.NaN }));
      expect(derivedToleratedRange(replicates), JSON.stringify(row)).toBe(row.toleratedRange);
    }
  });

  test('smaller dishes may differ more, and more dishes too', () => {
    const of = (seeds: number, replicates: number) =>
      derivedToleratedRange(evenly(seeds, replicates, seeds * replicates * 0.8));
    expect(of(25, 4)).toBeGreaterThan(of(50, 4));
    expect(of(50, 4)).toBeGreaterThan(of(100, 4));
    expect(of(50, 8)).toBeGreaterThan(of(50, 4));
    expect(of(50, 4)).toBeGreaterThan(of(50, 2));
  });

  test('counting the dead instead of the living changes nothing', () => {
    const replicates = [
      { seeds: 25, normal: 20 },
      { seeds: 50, normal: 45 },
      { seeds: 30, normal: 24 },
    ];
    const turned = replicates.map(({ seeds, normal }) => ({ seeds, normal: seeds - normal }));
    expect(derivedToleratedRange(turned)).toBe(derivedToleratedRange(replicates));
  });

  test('all or none leave nothing to differ by', () => {
    expect(derivedToleratedRange(evenly(50, 4, 200))).toBe(0);
    expect(derivedToleratedRange(evenly(50, 4, 0))).toBe(0);
  });
});

test('one replicate, or one with fewer than 10 seeds, has no tolerated range, and it says which', () => {
  expect(replicateTolerance(evenly(100, 1, 90))).toEqual({ ok: false, reason: 'one-replicate' });
  expect(replicateTolerance([])).toEqual({ ok: false, reason: 'one-replicate' });
  expect(replicateTolerance(evenly(9, 4, 30))).toEqual({ ok: false, reason: 'too-few-seeds' });
  expect(replicateTolerance([...evenly(50, 2, 90), { seeds: 5, normal: 4 }])).toEqual({
    ok: false,
    reason: 'too-few-seeds',
  });
  expect(replicateTolerance(evenly(10, 4, 30))).toMatchObject({ ok: true, basis: 'derived' });
});
