import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type DecimalMark,
  decideNumberFormat,
  numberReadings,
  parseNumber,
} from '../../../lib/domain/spreadsheet/number-format';

const RUNS = { seed: 20261125, numRuns: 500 };
const valuesOf = (text: string) => numberReadings(text).map((reading) => reading.value);

describe('readings of one text', () => {
  test.each<[string, number[]]>([
    ['12', [12]],
    ['0', [0]],
    ['4,5', [4.5]],
    ['4.5', [4.5]],
    [',5', [0.5]],
    ['0,125', [0.125]],
    ['1200,500', [1200.5]],
    ['1.200', [1.2, 1200]],
    ['1,200', [1.2, 1200]],
    ['1.200,5', [1200.5]],
    ['1,200.5', [1200.5]],
    ['1.200.000', [1_200_000]],
    ['1 200', [1200]],
    ['1\u00a0200,5', [1200.5]],
    ['1\u2009200.5', [1200.5]],
    ['1\u202f200\u202f000', [1_200_000]],
    ["1'200.50", [1200.5]],
    ['1’200', [1200]],
    ['-3,5', [-3.5]],
    ['−3,5', [-3.5]],
    ['1.5E+03', [1500]],
    ['2,5e-2', [0.025]],
  ])('%j', (text, expected) => {
    expect(valuesOf(text)).toEqual(expected);
  });

  test.each([
    '',
    ' ',
    'abc',
    'g 12',
    '12 34',
    '1.20.000',
    '1,2,3',
    '12-13',
    '46/50',
    '~12',
    '1..2',
    '12g13',
    '1 2000',
    '=1',
    '1.',
    '٣',
  ])('%j is not a number', (text) => {
    expect(valuesOf(text)).toEqual([]);
  });

  test('keeps the unit behind the number', () => {
    expect(numberReadings('12 g')).toEqual([{ value: 12, decimalMark: null, unit: 'g' }]);
    expect(numberReadings('8,5 %')).toEqual([{ value: 8.5, decimalMark: ',', unit: '%' }]);
    expect(numberReadings('92%')[0]?.unit).toBe('%');
    expect(numberReadings('1,5kg')[0]).toEqual({ value: 1.5, decimalMark: ',', unit: 'kg' });
  });
});

describe('the column decides', () => {
  test('one value that proves the decimal comma turns 1.200 into 1200', () => {
    const format = decideNumberFormat(['1.200', '4,5', '']);
    expect(format).toMatchObject({ decimalMark: ',', basis: 'proved', ambiguousCount: 1, note: null });
    expect(parseNumber('1.200', format)).toEqual({ ok: true, value: 1200, unit: null });
    expect(parseNumber('1,200', format)).toEqual({ ok: true, value: 1.2, unit: null });
  });

  test('and one that proves the decimal point turns it into 1.2', () => {
    const format = decideNumberFormat(['1.200', '4.5']);
    expect(parseNumber('1.200', format)).toEqual({ ok: true, value: 1.2, unit: null });
  });

  test('a column that shows nothing is not guessed, unless the rest of the file gives a hint', () => {
    const open = decideNumberFormat(['1.200', '900', '2.450']);
    expect(open).toMatchObject({ decimalMark: null, basis: 'ambiguous', ambiguousCount: 2 });
    expect(open.note).toContain('1.200');
    expect(parseNumber('1.200', open)).toEqual({ ok: false, reason: 'ambiguous', readings: [1.2, 1200] });
    expect(parseNumber('900', open)).toEqual({ ok: true, value: 900, unit: null });

    const hinted = decideNumberFormat(['1.200', '900'], { hint: ',' });
    expect(hinted).toMatchObject({ decimalMark: ',', basis: 'hinted' });
    expect(hinted.note).toContain('decimal comma');
    expect(parseNumber('1.200', hinted)).toMatchObject({ value: 1200 });
  });

  test('the column outweighs the hint', () => {
    expect(decideNumberFormat(['4.5', '1.200'], { hint: ',' }).decimalMark).toBe('.');
  });

  test('a column that contradicts itself reads only what is clear', () => {
    const format = decideNumberFormat(['4.5', '3,5', '1,200']);
    expect(format).toMatchObject({ decimalMark: null, basis: 'mixed' });
    expect(parseNumber('4.5', format)).toMatchObject({ value: 4.5 });
    expect(parseNumber('3,5', format)).toMatchObject({ value: 3.5 });
    expect(parseNumber('1,200', format)).toMatchObject({ reason: 'ambiguous' });
  });

  test('what can occur in the column rules out a reading', () => {
    const whole = decideNumberFormat(['1.200', '12'], { plausible: Number.isInteger });
    expect(whole).toMatchObject({ decimalMark: ',', basis: 'proved' });
    const moisture = decideNumberFormat(['8,125', '7,500'], { plausible: (value) => value <= 60 });
    expect(moisture).toMatchObject({ decimalMark: ',', basis: 'proved' });
  });
});

describe('laws', () => {
  function write(whole: number, decimals: string, mark: DecimalMark, group: string): string {
    const grouped = String(whole).replace(/\B(?=(\d{3})+$)/g, group);
    return decimals === '' ? grouped : `${grouped}${mark}${decimals}`;
  }
  const parts = fc.tuple(fc.nat(9_999_999), fc.stringMatching(/^\d{0,6}$/));

  test('any number written with either mark and any separator is among its readings', () => {
    const style = fc.constantFrom<[DecimalMark, string]>(
      [',', '.'],
      [',', ' '],
      [',', ''],
      ['.', ','],
      ['.', '’'],
      ['.', ''],
    );
    fc.assert(
      fc.property(parts, style, ([whole, decimals], [mark, group]) => {
        const text = write(whole, decimals, mark, group);
        expect(valuesOf(text)).toContain(Number(`${whole}.${decimals || '0'}`));
      }),
      RUNS,
    );
  });

  test('a whole column written in one style with one clear value comes back exactly', () => {
    const style = fc.constantFrom<[DecimalMark, string]>([',', '.'], [',', '\u202f'], ['.', ','], ['.', "'"]);
    fc.assert(
      fc.property(fc.array(parts, { minLength: 1, maxLength: 20 }), style, (numbers, [mark, group]) => {
        const texts = [...numbers.map(([whole, decimals]) => write(whole, decimals, mark, group)), `0${mark}5`];
        const format = decideNumberFormat(texts);
        expect(format.decimalMark).toBe(mark);
        numbers.forEach(([whole, decimals], index) => {
          const expected = { ok: true, value: Number(`${whole}.${decimals || '0'}`), unit: null };
          expect(parseNumber(texts[index] ?? '', format)).toEqual(expected);
        });
      }),
      RUNS,
    );
  });

  test('no text gives a reading that is not finite', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0123456789.,eE+- %g\u2009'), maxLength: 30 }), (text) => {
        for (const reading of numberReadings(text)) expect(Number.isFinite(reading.value)).toBe(true);
      }),
      { ...RUNS, numRuns: 3000 },
    );
  });
});
