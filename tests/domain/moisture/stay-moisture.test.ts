import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../../lib/domain/calendar/calendar-date';
import { type PacketMoistureTest, stayMoistures, weightedMean } from '../../../lib/domain/moisture/stay-moisture';
import { CONTAINERS, isHermetic } from '../../../lib/domain/stock/containers';
import type { Placement } from '../../../lib/domain/stock/storage-history';
import { expectClose, goldenRows } from '../../support/golden-table';

const stay = (from: string, overrides: Partial<Placement> = {}): Placement => ({
  storeId: 'fridge',
  from,
  container: 'glass-jar',
  moisturePercent: null,
  ...overrides,
});
const found = (
  testedOn: string,
  moisturePercent: number,
  standardPoints = 0.2,
  number = 'M-0001',
): PacketMoistureTest => ({
  number,
  testedOn,
  moisturePercent,
  standardPoints,
});
const moistures = (placements: Placement[], tests: PacketMoistureTest[]) =>
  stayMoistures(placements, tests).map(({ moisturePercent }) => moisturePercent);

describe('a test of a sealed packet', () => {
  test('holds for its whole stay, the days before the test too, and names where it is from', () => {
    const [filled] = stayMoistures([stay('2020-01-01')], [found('2024-05-01', 7.1)]);
    expect(filled).toMatchObject({
      from: '2020-01-01',
      moisturePercent: 7.1,
      measured: { moisturePercent: 7.1, tests: [{ number: 'M-0001', testedOn: '2024-05-01' }] },
    });
  });

  test('never changes a moisture that was written, nor one of an open container', () => {
    expect(moistures([stay('2020-01-01', { moisturePercent: 5.2 })], [found('2024-05-01', 7.9)])).toEqual([5.2]);
    expect(moistures([stay('2020-01-01', { container: 'paper-envelope' })], [found('2024-05-01', 9)])).toEqual([null]);
  });

  test('on the day of a move belongs to the new stay; the day before to the old one', () => {
    const places = [stay('2020-01-01'), stay('2022-01-01', { container: 'foil-pouch' })];
    expect(moistures(places, [found('2022-01-01', 6)])).toEqual([null, 6]);
    expect(moistures(places, [found('2021-12-31', 6)])).toEqual([6, null]);
    expect(moistures(places, [found('2019-12-31', 6)])).toEqual([null, null]);
  });

  test('holds on while the same jar is carried from store to store without a moisture being written', () => {
    const carried = [stay('2020-01-01'), stay('2021-01-01', { storeId: 'freezer' }), stay('2022-01-01')];
    expect(moistures(carried, [found('2021-06-01', 6.4)])).toEqual([6.4, 6.4, 6.4]);
  });

  test('ends where the seed is packed anew where it lies', () => {
    const repacked = [stay('2020-01-01'), stay('2021-01-01'), stay('2022-01-01', { storeId: 'freezer' })];
    expect(moistures(repacked, [found('2020-06-01', 8)])).toEqual([8, null, null]);
    expect(moistures(repacked, [found('2021-06-01', 6)])).toEqual([null, 6, 6]);
  });

  test('ends with the seal: another container, an open one, or a moisture written anew', () => {
    const opened = [
      stay('2020-01-01'),
      stay('2021-01-01', { container: 'open-tray' }),
      stay('2021-02-01'),
      stay('2022-01-01', { moisturePercent: 5 }),
      stay('2023-01-01'),
    ];
    expect(moistures(opened, [found('2020-06-01', 8)])).toEqual([8, null, null, 5, null]);
    expect(moistures(opened, [found('2021-02-01', 6)])).toEqual([null, null, 6, 5, null]);
    expect(moistures(opened, [found('2023-02-01', 6)])).toEqual([null, null, null, 5, 6]);
  });
});

describe('several tests of one stay', () => {
  test('an oven counts 25 times as much as the air over the seed', () => {
    const tests = [found('2021-01-01', 6, 0.2, 'M-0001'), found('2022-01-01', 8.6, 1, 'M-0002')];
    const [filled] = stayMoistures([stay('2020-01-01')], tests);
    expect(filled?.moisturePercent).toBeCloseTo((25 * 6 + 8.6) / 26, 12);
    expect(filled?.measured?.tests.map(({ number }) => number)).toEqual(['M-0001', 'M-0002']);
  });

  test("agree with R's weighted.mean to 1e-14", () => {
    const rows = goldenRows<{ case: number; moisturePercent: number; standardPoints: number; mean: number }>(
      'moisture-of-stays',
      'means',
    );
    for (const wanted of new Set(rows.map((row) => row.case))) {
      const tests = rows.filter((row) => row.case === wanted);
      expectClose(weightedMean(tests), tests[0]?.mean ?? Number.NaN, 1e-14, tests);
    }
    expect(() => weightedMean([])).toThrow(RangeError);
  });
});

const placement = fc.record({
  storeId: fc.constantFrom('fridge', 'freezer'),
  days: fc.integer({ min: 0, max: 900 }),
  container: fc.constantFrom(...CONTAINERS.map(({ key }) => key)),
  moisturePercent: fc.option(fc.double({ min: 2, max: 14, noNaN: true })),
});
const anyPlacements = fc.array(placement, { maxLength: 6 }).map((rows) => {
  let from = '2015-01-01';
  return rows.map(({ days, ...row }): Placement => {
    from = addDays(from, days);
    return { ...row, from };
  });
});
const anyTests = fc.array(
  fc.record({
    number: fc.string({ minLength: 1 }),
    testedOn: fc.integer({ min: -100, max: 5000 }).map((days) => addDays('2015-01-01', days)),
    moisturePercent: fc.double({ min: 2, max: 14, noNaN: true }),
    standardPoints: fc.constantFrom(0.2, 0.5, 1),
  }),
  { maxLength: 6 },
);

describe('for any history', () => {
  test('a written moisture, an open container, the stores and the dates stay as they were', () => {
    fc.assert(
      fc.property(anyPlacements, anyTests, (placements, tests) => {
        const filled = stayMoistures(placements, tests);
        expect(filled.map(({ moisturePercent: _, measured: __, ...rest }) => rest)).toEqual(
          placements.map(({ moisturePercent: _, ...rest }) => rest),
        );
        for (const [index, before] of placements.entries()) {
          const after = filled[index];
          if (before.moisturePercent !== null || !isHermetic(before.container)) expect(after).toEqual(before);
          else expect(after?.moisturePercent === null).toBe(after?.measured === undefined);
        }
      }),
      { seed: 20 },
    );
  });

  test('a filled moisture lies between the lowest and the highest test', () => {
    fc.assert(
      fc.property(anyPlacements, anyTests, (placements, tests) => {
        for (const { measured } of stayMoistures(placements, tests)) {
          if (!measured) continue;
          const moistures = tests.map(({ moisturePercent }) => moisturePercent);
          expect(measured.moisturePercent).toBeGreaterThanOrEqual(Math.min(...moistures) - 1e-9);
          expect(measured.moisturePercent).toBeLessThanOrEqual(Math.max(...moistures) + 1e-9);
        }
      }),
      { seed: 21 },
    );
  });

  test('the order in which tests are told does not matter', () => {
    fc.assert(
      fc.property(
        anyPlacements,
        fc.uniqueArray(
          anyTests.filter((tests) => tests.length > 0).map((tests) => tests[0] as PacketMoistureTest),
          { selector: ({ number }) => number, maxLength: 5 },
        ),
        (placements, tests) => {
          expect(stayMoistures(placements, tests.toReversed())).toEqual(stayMoistures(placements, tests));
        },
      ),
      { seed: 22 },
    );
  });
});

test('a test without a moisture or a standard deviation is refused by its number', () => {
  expect(() => stayMoistures([stay('2020-01-01')], [found('2021-01-01', 0)])).toThrow(/M-0001/);
  expect(() => stayMoistures([stay('2020-01-01')], [found('2021-01-01', 7, 0)])).toThrow(RangeError);
});
