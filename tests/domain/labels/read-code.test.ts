import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lotCode, packetCode, trayCode } from '@/lib/domain/labels/code-text';
import { readCode } from '@/lib/domain/labels/read-code';

describe('readCode', () => {
  test.each([
    ['P-00012', 'P-00012'],
    ['p-00012', 'P-00012'],
    [' P-00012\r\n', 'P-00012'],
    ['P 00012', 'P-00012'],
    ['p12', 'P-00012'],
    ['P–00012', 'P-00012'],
    ['Pß00012', 'P-00012'],
    ['\u001dP-00012', 'P-00012'],
    ['P-123456', 'P-123456'],
    ['https://seedroom.example:4300/p/P-00012', 'P-00012'],
    ['http://192.168.1.20:4300/p/p-00012', 'P-00012'],
    ['HTTPS://OLD-NAME.EXAMPLE/P/P-00012', 'P-00012'],
    ['https://seedroom.example/bank/p/P-00012/', 'P-00012'],
  ])('%j is packet %s', (text, number) => {
    expect(readCode(text)).toEqual({ kind: 'packet', number });
  });

  test.each([
    ['L-2024-0007', 'L-2024-0007'],
    ['l-2024-0007', 'L-2024-0007'],
    [' L 2024 031 ', 'L-2024-031'],
    ['https://seedroom.example/l/L-2024-031', 'L-2024-031'],
    // a bank's own way of numbering, with signs that an address must write otherwise
    ['https://seedroom.example/l/Kale%2019%2F3', 'Kale 19/3'],
  ])('%j is lot %s', (text, number) => {
    expect(readCode(text)).toEqual({ kind: 'lot', number });
  });

  test.each([
    ['T-0204', 'T-0204', null],
    ['t204', 'T-0204', null],
    [' T 0204\r', 'T-0204', null],
    ['Tß0204ß2', 'T-0204', 2],
    ['T-0204-2', 'T-0204', 2],
    ['t-0204/12', 'T-0204', 12],
    ['T-12345', 'T-12345', null],
    ['T-0204-0', 'T-0204', null],
    ['https://seedroom.example:4300/t/T-0204', 'T-0204', null],
    ['HTTPS://OLD-NAME.EXAMPLE/T/T-0204-3', 'T-0204', 3],
    ['https://seedroom.example/bank/t/t-204-1/', 'T-0204', 1],
  ])('%j is test %s, dish %s', (text, number, dish) => {
    expect(readCode(text)).toEqual({ kind: 'tray', number, dish });
  });

  test('a lot that the bank numbers like a test is still its lot, where the address says so', () => {
    expect(readCode('https://seedroom.example/l/T-12')).toEqual({ kind: 'lot', number: 'T-12' });
  });

  test.each([
    '',
    ' ',
    'P-',
    'P-12x',
    'kale',
    '00012',
    'L-2024',
    '4006381333931',
    'https://seedroom.example/',
    'https://seedroom.example/p/',
    'https://seedroom.example/p/L-2024-031',
    'https://seedroom.example/l/P-00012',
    'https://seedroom.example/x/P-00012',
    'T-',
    'T-0204-',
    'T-0204-1234',
    'https://seedroom.example/t/P-00012',
    'https://seedroom.example/t/T-0204/2',
    'https://seedroom.example/p/T-0204',
    'https://seedroom.example/?next=/p/P-00012',
    'https://seedroom.example/p/%E0%A4%A',
    'javascript:alert(1)/p/P-00012',
  ])('%j is neither', (text) => {
    expect(readCode(text)).toBeNull();
  });

  test('what a label says is read back as the same number, with and without an address', () => {
    const address = fc.constantFrom(
      null,
      'https://seedroom.example:4300',
      'http://10.0.0.7:4300/',
      'https://a.example/b',
    );
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9_999_999 }), address, (running, bank) => {
        const number = `P-${String(running).padStart(5, '0')}`;
        expect(readCode(packetCode(number, bank))).toEqual({ kind: 'packet', number });
      }),
    );
    const anyDish = fc.option(fc.integer({ min: 1, max: 100 }));
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9_999_999 }), anyDish, address, (running, dish, bank) => {
        const number = `T-${String(running).padStart(4, '0')}`;
        expect(readCode(trayCode(number, dish, bank))).toEqual({ kind: 'tray', number, dish });
      }),
    );
    const own = fc.string({ minLength: 1, maxLength: 20, unit: 'binary' }).map((text) => text.trim());
    fc.assert(
      fc.property(
        own.filter((text) => text !== '' && !/[\p{Cc}\p{Cf}\p{Cs}]/u.test(text) && readCode(text) === null),
        (number) => {
          expect(readCode(lotCode(number, 'https://seedroom.example'))).toEqual({ kind: 'lot', number });
        },
      ),
    );
  });

  test('never throws, whatever a scanner types', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(() => readCode(text)).not.toThrow();
      }),
    );
  });
});
