import { describe, expect, it } from 'vitest';
import { toEpochDay } from '../../../lib/domain/calendar/calendar-date';
import { FORECAST_LEVEL, forecastCurve, yearlyDays } from '../../../lib/domain/longevity/forecast-curve';
import { fitLot, viabilityAt } from '../../../lib/domain/longevity/lot-model';
import { INITIAL_PRIOR, OWN_RATE_PRIOR } from '../../../lib/domain/longevity/priors';

const posterior = fitLot({
  tests: [{ probitsLost: 0.1, germinated: 188, sown: 200 }],
  prior: { initial: INITIAL_PRIOR, logRate: OWN_RATE_PRIOR },
});
const FROM = toEpochDay('2020-06-15');
const TO = toEpochDay('2034-02-01');
const probitsAt = (day: number) => (day - FROM) / 2000;
const shape = { posterior, probitsAt, fromDay: FROM, toDay: TO };

describe('the points of a forecast', () => {
  it('are the model’s figures at their days', () => {
    for (const point of forecastCurve({ ...shape, steps: 5 })) {
      const { median, lower, upper } = viabilityAt(posterior, {
        probitsLost: probitsAt(point.day),
        level: FORECAST_LEVEL,
      });
      expect(point).toMatchObject({ median, lower, upper });
    }
  });

  it('begin and end where asked, in order, with the days that must be there, once', () => {
    const today = toEpochDay('2026-11-25');
    const days = forecastCurve({ ...shape, steps: 10, extraDays: [today, today, FROM, FROM - 5, TO + 5] }).map(
      ({ day }) => day,
    );
    expect(days[0]).toBe(FROM);
    expect(days.at(-1)).toBe(TO);
    expect(days).toContain(today);
    expect(days).toEqual([...new Set(days)].sort((a, b) => a - b));
    expect(days).toHaveLength(12);
  });

  it('refuse a curve that goes backwards or has no steps', () => {
    expect(() => forecastCurve({ ...shape, toDay: FROM })).toThrow(RangeError);
    for (const steps of [0, -1, 1.5]) expect(() => forecastCurve({ ...shape, steps })).toThrow(/steps must be/);
  });
});

describe('the rows of its table', () => {
  it('are both ends and every first of January between', () => {
    const days = yearlyDays(FROM, TO);
    expect(days[0]).toBe(FROM);
    expect(days.at(-1)).toBe(TO);
    expect(days.slice(1, -1)).toEqual(Array.from({ length: 14 }, (_, index) => toEpochDay(`${2021 + index}-01-01`)));
  });

  it('do not repeat an end that falls on a first of January', () => {
    const [from, to] = [toEpochDay('2021-01-01'), toEpochDay('2024-01-01')];
    expect(yearlyDays(from, to)).toEqual([from, toEpochDay('2022-01-01'), toEpochDay('2023-01-01'), to]);
  });

  it('skip years evenly when there would be too many', () => {
    const days = yearlyDays(toEpochDay('2000-01-02'), toEpochDay('2099-12-31'), 12);
    expect(days.length).toBeLessThanOrEqual(12);
    const years = days.slice(1, -1);
    const gaps = new Set(years.slice(1).map((day, index) => Math.round((day - (years[index] as number)) / 365.25)));
    expect(gaps.size).toBe(1);
  });
});
