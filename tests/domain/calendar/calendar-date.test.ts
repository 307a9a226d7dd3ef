import { addDays as addLocalDays, addMonths as addLocalMonths, format } from 'date-fns';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addDays,
  addMonths,
  daysBetween,
  fromEpochDay,
  isCalendarDate,
  toEpochDay,
} from '../../../lib/domain/calendar/calendar-date';

const dates = fc.integer({ min: -200_000, max: 200_000 }).map(fromEpochDay);

describe('isCalendarDate', () => {
  test.each(['2024-02-29', '2000-02-29', '1900-02-28', '2026-12-31', '0001-01-01', '9999-12-31'])(
    'accepts %s',
    (text) => {
      expect(isCalendarDate(text)).toBe(true);
    },
  );

  test.each(['2023-02-29', '1900-02-29', '2026-04-31', '2026-13-01', '2026-00-10', '2026-01-00', '0000-01-01'])(
    'refuses %s, which does not exist',
    (text) => {
      expect(isCalendarDate(text)).toBe(false);
      expect(() => toEpochDay(text)).toThrow(RangeError);
    },
  );

  test.each(['2024-2-9', '2024-02-09T00:00', ' 2024-02-09', '09-02-2024', '', null, undefined, 20240209])(
    'refuses %s, which is not written YYYY-MM-DD',
    (text) => {
      expect(isCalendarDate(text)).toBe(false);
    },
  );
});

describe('day arithmetic', () => {
  test('counts days from 1970-01-01', () => {
    expect(toEpochDay('1970-01-01')).toBe(0);
    expect(toEpochDay('1969-12-31')).toBe(-1);
    expect(toEpochDay('2000-03-01')).toBe(11_017);
    expect(fromEpochDay(11_016)).toBe('2000-02-29');
  });

  test('epoch days and dates undo each other', () => {
    fc.assert(
      fc.property(fc.integer({ min: -719_162, max: 2_932_896 }), (day) => {
        expect(toEpochDay(fromEpochDay(day))).toBe(day);
      }),
      { seed: 20260107 },
    );
  });

  test('a date reached by adding days lies that many days away', () => {
    fc.assert(
      fc.property(dates, fc.integer({ min: -50_000, max: 50_000 }), (date, days) => {
        expect(daysBetween(date, addDays(date, days))).toBe(days);
      }),
      { seed: 20260108 },
    );
  });

  test('agrees with date-fns on local calendar days', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1950, max: 2150 }),
        fc.integer({ min: 0, max: 364 }),
        fc.integer({ min: 0, max: 9999 }),
        (y, d, n) => {
          const local = addLocalDays(new Date(y, 0, 1), d);
          expect(addDays(format(local, 'yyyy-MM-dd'), n)).toBe(format(addLocalDays(local, n), 'yyyy-MM-dd'));
          const months = n % 500;
          expect(addMonths(format(local, 'yyyy-MM-dd'), months)).toBe(
            format(addLocalMonths(local, months), 'yyyy-MM-dd'),
          );
        },
      ),
      { seed: 20260109 },
    );
  });

  test('a year across a leap day has 366 days', () => {
    expect(daysBetween('2024-01-01', '2025-01-01')).toBe(366);
    expect(daysBetween('2023-01-01', '2024-01-01')).toBe(365);
    expect(daysBetween('2025-01-01', '2024-01-01')).toBe(-366);
  });

  test('refuses part days and dates past the year 9999', () => {
    expect(() => addDays('2024-01-01', 0.5)).toThrow(/addDays.*0\.5/);
    expect(() => addDays('9999-12-31', 1)).toThrow(RangeError);
    expect(() => fromEpochDay(Number.NaN)).toThrow(RangeError);
  });
});

describe('addMonths', () => {
  test.each([
    ['2024-01-31', 1, '2024-02-29'],
    ['2023-01-31', 1, '2023-02-28'],
    ['2024-02-29', 12, '2025-02-28'],
    ['2026-11-30', 3, '2027-02-28'],
    ['2026-03-31', -1, '2026-02-28'],
    ['2026-01-15', -13, '2024-12-15'],
  ])('%s plus %d months is %s: the last day where the month is shorter', (date, months, expected) => {
    expect(addMonths(date, months)).toBe(expected);
  });

  test('refuses part months and dates that do not exist', () => {
    expect(() => addMonths('2026-01-31', 0.5)).toThrow(/months/);
    expect(() => addMonths('2026-02-30', 1)).toThrow(RangeError);
  });
});
