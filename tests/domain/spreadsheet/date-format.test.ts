import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { daysBetween, fromEpochDay } from '../../../lib/domain/calendar/calendar-date';
import { decideDateFormat, parseDate } from '../../../lib/domain/spreadsheet/date-format';
import { monthFromName } from '../../../lib/domain/spreadsheet/month-names';

const RUNS = { seed: 20261125, numRuns: 500 };

/** Reads a whole column; a text for what could not be read. */
function readColumn(...values: string[]) {
  const format = decideDateFormat(values);
  return values.map((value) => {
    const parsed = parseDate(value, format);
    return parsed.ok ? parsed.date : parsed.reason;
  });
}

describe('one date', () => {
  test.each([
    ['2019-12-31', '2019-12-31'],
    ['2019/12/31', '2019-12-31'],
    ['20191231', '2019-12-31'],
    ['2019-12-31T00:00:00Z', '2019-12-31'],
    ['2019-12-31 14:05', '2019-12-31'],
    ['31.12.2019', '2019-12-31'],
    ['31/12/2019', '2019-12-31'],
    ['31-12-19', '2019-12-31'],
    ['31. 12. 2019', '2019-12-31'],
    ['1.3.68', '2068-03-01'],
    ['1.3.69', '1969-03-01'],
    ['3 Mar 2019', '2019-03-03'],
    ['3-Mar-19', '2019-03-03'],
    ['3rd March 2019', '2019-03-03'],
    ['Mar 3, 2019', '2019-03-03'],
    ['March 3rd, 2019', '2019-03-03'],
    ['2019 Mar 3', '2019-03-03'],
    ['3. März 2019', '2019-03-03'],
    ['1er août 2019', '2019-08-01'],
    ['3 de marzo de 2019', '2019-03-03'],
  ])('%j is %s', (text, date) => {
    expect(parseDate(text, decideDateFormat([text]))).toEqual({ ok: true, date, precision: 'day' });
  });

  test.each([
    ['2019', '2019-07-01', 'year'],
    ['2019-12', '2019-12-15', 'month'],
    ['12/2019', '2019-12-15', 'month'],
    ['Dec 2019', '2019-12-15', 'month'],
    ['Dec-19', '2019-12-15', 'month'],
    ['Dezember 2019', '2019-12-15', 'month'],
  ])('%j says less than a day and is kept at its middle, %s', (text, date, precision) => {
    expect(parseDate(text, decideDateFormat([text]))).toEqual({ ok: true, date, precision });
  });

  test.each(['31.02.2019', '2019-02-29', '32.01.2019', '00.01.2019', '31.12.0000', '30 Feb 2019'])(
    '%j is a date that does not exist',
    (text) => {
      expect(readColumn(text)).toEqual(['impossible']);
    },
  );

  test.each([
    'unknown',
    '2018/19',
    '2010/11',
    '2019-13',
    '3 Foo 2019',
    '12',
    '5 g',
    '31.12',
    '2019-12-31-01',
    '1.2.3.2019',
    '43831',
  ])('%j beside an ordinary date is not a date', (text) => {
    expect(readColumn('31.12.2019', text)[1]).toBe('not-a-date');
  });
});

describe('the column decides the order', () => {
  test('month-first when a second part is over 12 and no first part is', () => {
    expect(readColumn('03/04/2019', '12/31/2019')).toEqual(['2019-03-04', '2019-12-31']);
  });
  test('day-first when a first part is over 12', () => {
    expect(readColumn('03/04/2019', '31/12/2019')).toEqual(['2019-04-03', '2019-12-31']);
  });
  test('both sides of the boundary: 12 proves nothing, 13 does', () => {
    expect(readColumn('03/04/2019', '01/12/2019')).toEqual(['2019-04-03', '2019-12-01']);
    expect(readColumn('03/04/2019', '01/13/2019')).toEqual(['2019-03-04', '2019-01-13']);
  });
  test('when nothing shows it, day-first is assumed and said with an example', () => {
    const format = decideDateFormat(['03/04/2019', '2019-05-06']);
    expect(format).toMatchObject({ order: 'day-first', basis: 'assumed' });
    expect(format.notes[0]).toContain('03/04/2019 as 2019-04-03');
    expect(decideDateFormat(['05/05/2019']).notes).toEqual([]);
  });
  test('another column of the file may give a hint, which is said', () => {
    const format = decideDateFormat(['03/04/2019'], { hint: 'month-first' });
    expect(format).toMatchObject({ order: 'month-first', basis: 'hinted' });
    expect(decideDateFormat(['03/04/2019', '31/12/2019'], { hint: 'month-first' }).order).toBe('day-first');
  });
  test('a column with both orders reads only the dates that are clear', () => {
    expect(readColumn('31/12/2019', '12/31/2019', '03/04/2019', '05/05/2019')).toEqual([
      '2019-12-31',
      '2019-12-31',
      'ambiguous',
      '2019-05-05',
    ]);
  });
});

describe('day numbers of spreadsheet programs', () => {
  test('are dates when the whole column is such numbers', () => {
    // 43831 is 2020-01-01 (ECMA-376 part 1, 18.17.4.1 counts 1900-01-01 as 1 and a 29 February 1900 that never was).
    expect(readColumn('43831', '', '43831.5').filter((_, index) => index !== 1)).toEqual(['2020-01-01', '2020-01-01']);
    expect(decideDateFormat(['43831']).notes[0]).toContain('43831 is 2020-01-01');
  });
  test('are not when the column also has dates or years', () => {
    expect(readColumn('43831', '2019')).toEqual(['not-a-date', '2019-07-01']);
  });
});

test('no name stands for two months', () => {
  expect([monthFromName('Mai'), monthFromName('DÉC.'), monthFromName('sept'), monthFromName('Mon')]).toEqual([
    5,
    12,
    9,
    null,
  ]);
});

describe('laws', () => {
  const FIRST = daysBetween('1970-01-01', '1969-01-01');
  const LAST = daysBetween('1970-01-01', '2068-12-31');
  const days = fc.array(fc.integer({ min: FIRST, max: LAST }), { minLength: 1, maxLength: 15 });
  const two = (text: string) => Number(text);
  const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
  const writers: Record<string, (year: string, month: string, day: string) => string> = {
    ISO: (year, month, day) => `${year}-${month}-${day}`,
    'day-first, dots': (year, month, day) => `${two(day)}.${two(month)}.${year}`,
    'day-first, slashes': (year, month, day) => `${day}/${month}/${year}`,
    'day-first, two-digit year': (year, month, day) => `${day}-${month}-${year.slice(2)}`,
    'month by name': (year, month, day) => `${two(day)} ${MONTHS[two(month) - 1]} ${year}`,
    'month by name first': (year, month, day) => `${MONTHS[two(month) - 1]} ${two(day)}, ${year}`,
  };
  test.each(Object.keys(writers))('dates written as %s come back', (style) => {
    fc.assert(
      fc.property(days, (numbers) => {
        const dates = numbers.map(fromEpochDay);
        const texts = dates.map((date) => {
          const [year = '', month = '', day = ''] = date.split('-');
          return writers[style]?.(year, month, day) ?? '';
        });
        expect(readColumn(...texts)).toEqual(dates);
      }),
      RUNS,
    );
  });

  test('month-first dates come back when one of them proves the order', () => {
    fc.assert(
      fc.property(days, (numbers) => {
        const dates = [...numbers.map(fromEpochDay), '2019-12-31'];
        const texts = dates.map((date) => `${date.slice(5, 7)}/${date.slice(8)}/${date.slice(0, 4)}`);
        expect(readColumn(...texts)).toEqual(dates);
      }),
      RUNS,
    );
  });

  test('day numbers come back, counted from 1899-12-30', () => {
    const upTo2064 = days.map((numbers) =>
      numbers.map((day) => Math.min(day, daysBetween('1970-01-01', '2064-04-08'))),
    );
    fc.assert(
      fc.property(upTo2064, (numbers) => {
        const dates = numbers.map(fromEpochDay);
        expect(readColumn(...dates.map((date) => String(daysBetween('1899-12-30', date))))).toEqual(dates);
      }),
      RUNS,
    );
  });
});
