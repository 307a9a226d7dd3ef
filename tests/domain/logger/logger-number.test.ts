import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LoggerNumber, readLoggerNumber } from '@/lib/domain/logger/logger-number';

function read(text: string) {
  const into: LoggerNumber = { value: 0, unit: null, percent: false, decimals: 0 };
  return readLoggerNumber(text, 0, text.length, into) ? into : null;
}

describe('a number in a cell', () => {
  it.each([
    ['-18,4', -18.4, null],
    ['−18.4', -18.4, null],
    [' +4.5 ', 4.5, null],
    ['.5', 0.5, null],
    ['39.2 °F', 39.2, 'F'],
    ['4,5°C', 4.5, 'C'],
    ['4.5 C', 4.5, 'C'],
    ['4.5 \uFFFDC', 4.5, 'C'],
    ['45 %', 45, null],
    ['45.5 %RH', 45.5, null],
    ['45,5 % r.F.', 45.5, null],
  ])('%s', (text, value, unit) => expect(read(text)).toMatchObject({ value, unit }));

  it.each(['', ' ', '---', 'Err', 'NaN', 'Infinity', '4.5 V', '4.5.6', '1e5', '0x10', '12:30', '1234567890123456'])(
    '%s is none',
    (text) => expect(read(text)).toBeNull(),
  );

  it('is the same double as Number() gives, with point or comma', () => {
    fc.assert(
      fc.property(fc.integer({ min: -999_999, max: 999_999 }), fc.integer({ min: 0, max: 4 }), (whole, decimals) => {
        const text = (whole / 10 ** decimals).toFixed(decimals);
        expect(read(text)?.value).toBe(Number(text) + 0);
        expect(read(text.replace('.', ','))?.value).toBe(Number(text) + 0);
      }),
    );
  });
});
