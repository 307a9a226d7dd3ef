import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysBetween } from '../../../lib/domain/calendar/calendar-date';
import { chanceBelowByYear, datesBelowThreshold } from '../../../lib/domain/longevity/date-below-threshold';
import { fitLot, probabilityBelow } from '../../../lib/domain/longevity/lot-model';
import { probitsUntilBelow } from '../../../lib/domain/longevity/probits-until-below';
import { goldenRows } from '../../support/golden-table';

const prior = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0, sd: 0.5 } };
const posterior = fitLot({
  tests: [
    { probitsLost: 0, germinated: 96, sown: 100 },
    { probitsLost: 0.3, germinated: 92, sown: 100 },
  ],
  prior,
});
const question = { posterior, probitsLostNow: 0.3, ratePerDay: 0.0002, threshold: 0.8, today: '2026-11-25' };

interface LotRow {
  name: string;
  initialMean: number;
  initialSd: number;
  rateMean: number;
  rateSd: number;
  /** -1: the lot has no tests */
  probitsLost: number;
  germinated: number;
  sown: number;
}
interface QuantileRow {
  name: string;
  threshold: number;
  chance: number;
  probits: number;
}

describe('the ageing at which a lot falls below', () => {
  it("has R's quantiles, found from every possible lot's own date: within 0.003 of the chance, and 2 % (or 0.001 probits) of the ageing", () => {
    const lots = goldenRows<LotRow>('date-below-threshold', 'lots');
    for (const row of goldenRows<QuantileRow>('date-below-threshold', 'quantiles')) {
      const mine = lots.filter(({ name }) => name === row.name);
      const first = mine[0] as LotRow;
      const fitted = fitLot({
        tests: mine.filter(({ probitsLost }) => probitsLost >= 0),
        prior: {
          initial: { mean: first.initialMean, sd: first.initialSd },
          logRate: { mean: first.rateMean, sd: first.rateSd },
        },
      });
      const { threshold, chance } = row;
      const probits = probitsUntilBelow(fitted, { threshold, chance });
      if (row.probits === 0) {
        expect(probits, JSON.stringify(row)).toBe(0);
        continue;
      }
      const at = probabilityBelow(fitted, { probitsLost: row.probits, threshold });
      expect(Math.abs(at - chance), JSON.stringify(row)).toBeLessThan(0.003);
      expect(Math.abs((probits as number) - row.probits), JSON.stringify({ row, probits })).toBeLessThan(
        0.02 * row.probits + 0.001,
      );
    }
  });
});

describe('datesBelowThreshold', () => {
  it('has on each date the chance of being below that it was asked for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.03, max: 0.97, noNaN: true }),
        fc.double({ min: 0.5, max: 0.9, noNaN: true }),
        (chance, threshold) => {
          const [found] = datesBelowThreshold({ ...question, threshold, chances: [chance] });
          const now = probabilityBelow(posterior, { probitsLost: 0.3, threshold });
          if (found?.date === 'passed') {
            expect(now).toBeGreaterThan(chance - 1e-4);
            return;
          }
          if (!found?.date) return; // beyond 200 years
          const on = (days: number) => probabilityBelow(posterior, { probitsLost: 0.3 + days * 0.0002, threshold });
          const days = daysBetween('2026-11-25', found.date);
          expect(on(days)).toBeGreaterThan(chance - 2e-4);
          expect(on(days - 1)).toBeLessThan(chance + 2e-4);
        },
      ),
      { seed: 20260905, numRuns: 100 },
    );
  });

  it('puts the dates in the order of their chances', () => {
    const dates = datesBelowThreshold({ ...question, chances: [0.1, 0.5, 0.9] }).map(({ date }) => date as string);
    expect(dates).toEqual([...dates].sort());
    expect(new Set(dates).size).toBe(3);
  });

  it('says passed for a lot that is past it, and nothing beyond 200 years', () => {
    const past = datesBelowThreshold({ ...question, probitsLostNow: 9, chances: [0.1, 0.95] });
    expect(past.map(({ date }) => date)).toEqual(['passed', 'passed']);
    const cold = datesBelowThreshold({ ...question, ratePerDay: 1e-8, chances: [0.5, 0.9] });
    expect(cold.map(({ date }) => date)).toEqual([null, null]);
  });
});

describe('chanceBelowByYear', () => {
  const probitsAt = (day: number) => 0.3 + (day - 20_782) * 0.0002; // 2026-11-25 is day 20 782
  const ask = (years: number) =>
    chanceBelowByYear({ posterior, probitsAt, threshold: 0.8, today: '2026-11-25', years });

  it('adds up: below now and the chances in the years are the chance by the end', () => {
    const { belowNow, byYear } = ask(40);
    expect(belowNow).toBeCloseTo(probabilityBelow(posterior, { probitsLost: 0.3, threshold: 0.8 }), 12);
    const total = byYear.reduce((sum, { chanceInYear }) => sum + chanceInYear, belowNow);
    expect(total).toBeCloseTo(byYear.at(-1)?.chanceByEnd as number, 12);
    expect(byYear.at(-1)?.chanceByEnd).toBeCloseTo(
      probabilityBelow(posterior, { probitsLost: probitsAt(35_429), threshold: 0.8 }), // 2067-01-01
      3,
    );
  });

  it('begins with what is left of this year and names each year once', () => {
    const { byYear } = ask(5);
    expect(byYear.map(({ year }) => year)).toEqual([2026, 2027, 2028, 2029, 2030]);
    // Five weeks of it, against a whole year.
    expect((byYear[0] as { chanceInYear: number }).chanceInYear).toBeLessThan(
      (byYear[1] as { chanceInYear: number }).chanceInYear / 3,
    );
  });

  it('never takes a chance back', () => {
    for (const { chanceInYear } of ask(150).byYear) expect(chanceInYear).toBeGreaterThanOrEqual(0);
    const rippling = (day: number) => 0.3 - (day - 20_782) * 1e-6;
    const { belowNow, byYear } = chanceBelowByYear({
      posterior,
      probitsAt: rippling,
      threshold: 0.8,
      today: '2026-11-25',
      years: 5,
    });
    expect(byYear.map(({ chanceByEnd }) => chanceByEnd)).toEqual(Array(5).fill(belowNow));
  });

  it('has the median date in the year in which the chance passes one half', () => {
    const [found] = datesBelowThreshold({ ...question, chances: [0.5] });
    const year = ask(100).byYear.find(({ chanceByEnd }) => chanceByEnd >= 0.5)?.year;
    expect(String(found?.date).slice(0, 4)).toBe(String(year));
  });

  it('refuses no years', () => {
    expect(() => ask(0)).toThrow(RangeError);
  });
});
