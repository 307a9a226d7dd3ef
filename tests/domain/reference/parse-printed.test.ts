import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  metresFromFeet,
  metresFromMiles,
  metresFromPrinted,
  rangeFromPrinted,
  rowsFromTable,
  temperaturesFromPrinted,
} from '../../../lib/domain/reference/parse-printed';

describe('metres', () => {
  it('come from the international foot and mile, kept to the centimetre', () => {
    // 7 CFR 201.76 prints 402.34 m for 1,320 ft and 251.46 m for 825 ft.
    expect(metresFromFeet(1320)).toBe(402.34);
    expect(metresFromFeet(825)).toBe(251.46);
    expect(metresFromMiles(1)).toBe(1609.34);
    expect(metresFromFeet(0)).toBe(0);
  });

  it('agree between feet and miles: 5,280 ft are a mile', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100 }), (miles) => {
        expect(metresFromFeet(miles * 5280)).toBeCloseTo(metresFromMiles(miles), 6);
      }),
      { seed: 7 },
    );
  });

  it('refuse a negative or endless distance', () => {
    expect(() => metresFromFeet(-1)).toThrow(/metresFromFeet: feet -1/);
    expect(() => metresFromMiles(Number.POSITIVE_INFINITY)).toThrow(RangeError);
    expect(() => metresFromFeet(Number.NaN)).toThrow(RangeError);
  });
});

describe('a printed distance', () => {
  it.each([
    ['20 ft', 6.1, 6.1],
    ['1/2 mi', 804.67, 804.67],
    ['1/2-5 mi', 804.67, 8046.72],
    ['20-50 ft', 6.1, 15.24],
    ['150 ft-1/2 mi', 45.72, 804.67],
    ['600-1,300 ft', 182.88, 396.24],
    ['660 ft (CFR)', 201.17, 201.17],
    ['500 ft-1/2 mi garden scale', 152.4, 804.67],
  ])('%s is %d to %d m', (printed, lower, upper) => {
    expect(metresFromPrinted(printed)).toEqual({ lower, upper });
  });

  it.each(['', 'see CFR', '20', '20 km', 'about 20 ft', '5-1 mi'])('"%s" is refused, not guessed', (printed) => {
    expect(() => metresFromPrinted(printed)).toThrow(RangeError);
  });
});

describe('a printed figure', () => {
  it.each([
    ['4', 4, 4],
    ['2-3', 2, 3],
    ['2,500', 2500, 2500],
    ['10-25 (50 for keeping rare types)', 10, 25],
  ])('%s is %d to %d', (printed, lower, upper) => {
    expect(rangeFromPrinted(printed)).toEqual({ lower, upper });
  });

  it.each(['', 'None', '3-1', '-2', '4-'])('"%s" is refused, not guessed', (printed) => {
    expect(() => rangeFromPrinted(printed)).toThrow(RangeError);
  });
});

describe('printed temperatures', () => {
  it('alternate from the first figure at night to the second by day; alternates follow the semicolon', () => {
    expect(temperaturesFromPrinted('20-30; 25')).toEqual([
      { dayC: 30, nightC: 20 },
      { dayC: 25, nightC: null },
    ]);
    expect(temperaturesFromPrinted('15')).toEqual([{ dayC: 15, nightC: null }]);
  });

  it.each(['', '20-', 'warm', '20;'])('"%s" is refused', (printed) => {
    expect(() => temperaturesFromPrinted(printed)).toThrow(RangeError);
  });

  it('keep every printed figure, in any number of alternates', () => {
    const regime = fc.tuple(fc.integer({ min: 5, max: 45 }), fc.option(fc.integer({ min: 5, max: 45 })));
    fc.assert(
      fc.property(fc.array(regime, { minLength: 1, maxLength: 4 }), (regimes) => {
        const printed = regimes.map(([first, second]) => (second === null ? `${first}` : `${first}-${second}`));
        expect(temperaturesFromPrinted(printed.join('; '))).toEqual(
          regimes.map(([first, second]) =>
            second === null ? { dayC: first, nightC: null } : { dayC: second, nightC: first },
          ),
        );
      }),
      { seed: 11 },
    );
  });
});

describe('a tab-separated table', () => {
  it('is keyed by its header, skips remarks and keeps a missing last cell as empty', () => {
    expect(rowsFromTable('# remark\na\tb\n1\t2\n3\t\n4\n')).toEqual([
      { a: '1', b: '2' },
      { a: '3', b: '' },
      { a: '4', b: '' },
    ]);
    expect(() => rowsFromTable('# only a remark\n')).toThrow(RangeError);
  });
});
