import { describe, expect, test } from 'vitest';
import { bankAddress } from '@/lib/schemas/bank-address';

const message = (text: string) => bankAddress.safeParse(text).error?.issues[0]?.message;

describe('the address that stands in codes', () => {
  test.each([
    ['https://seedroom.example:4300', 'https://seedroom.example:4300'],
    [' HTTPS://Seedroom.Example/ ', 'https://seedroom.example'],
    ['http://192.168.1.20:4300', 'http://192.168.1.20:4300'],
  ])('%j is kept as %s', (typed, kept) => {
    expect(bankAddress.parse(typed)).toBe(kept);
  });

  test.each([
    'seedroom.example',
    'ftp://seedroom.example',
    'javascript:alert(1)',
    'https://',
    'https://me@seedroom.example',
  ])('%j is refused with an example of what to write', (typed) => {
    expect(message(typed)).toMatch(/such as https:\/\/seedroom\.example:4300/);
  });

  test('a path is refused, because labels add their own', () => {
    expect(message('https://seedroom.example/bank')).toMatch(/Leave out what follows/);
    expect(message('https://seedroom.example/?a=1')).toMatch(/Leave out what follows/);
  });

  test('a long address would make codes too large for small labels', () => {
    expect(message(`https://${'a'.repeat(60)}.example`)).toMatch(/Shorten this to 60/);
  });
});
