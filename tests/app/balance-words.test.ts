import { expect, test } from 'vitest';
import { balanceInWords, signedCount, spreadInWords } from '@/app/_format/balance-words';

test('a balance says its band, and says no band when it is known to the seed', () => {
  expect(balanceInWords({ seeds: 1240, lower: 1150, upper: 1330 })).toBe('about 1\u202f240 (1\u202f150–1\u202f330)');
  expect(balanceInWords({ seeds: 1240, lower: 1240, upper: 1240 })).toBe('1\u202f240');
  expect(balanceInWords({ seeds: 0, lower: 0, upper: 0 })).toBe('0');
  expect(balanceInWords({ seeds: 0, lower: 0, upper: 12 })).toBe('about 0 (0–12)');
});

test('an amount says which way it went, and how far it may be off', () => {
  expect([1240, -200, 0].map(signedCount)).toEqual(['+1\u202f240', '−200', '0']);
  expect(spreadInWords(36.5)).toBe('± 60');
  expect([0, null, 0.2].map(spreadInWords)).toEqual([null, null, null]);
});
