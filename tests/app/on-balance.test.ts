import { expect, test } from 'vitest';
import { formatOnBalance, formatUpOnBalance } from '../../app/(bank)/reference/_parts/on-balance';

test('grams have the decimals that the balance shows', () => {
  expect(formatOnBalance(1.2341, 0.01)).toBe('1.23 g');
  expect(formatOnBalance(1.2341, 1)).toBe('1 g');
});

test('what is weighed out is a whole step of the balance, never less than wanted', () => {
  expect(formatUpOnBalance(1.2341, 0.01)).toBe('1.24 g');
  expect(formatUpOnBalance(1.2341, 0.5)).toBe('1.5 g');
  expect(formatUpOnBalance(1.23, 0.01)).toBe('1.23 g');
});
