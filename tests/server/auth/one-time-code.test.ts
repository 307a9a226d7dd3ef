import { expect, it } from 'vitest';
import { hashOneTimeCode, newOneTimeCode, oneTimeCodeExpiry, sameText } from '@/lib/server/auth/one-time-code';

it('has four groups of four without look-alike characters', () => {
  for (let i = 0; i < 200; i += 1) expect(newOneTimeCode()).toMatch(/^[2-9A-HJKMNP-Z]{4}(-[2-9A-HJKMNP-Z]{4}){3}$/);
});

it('is never the same twice', () => {
  expect(new Set(Array.from({ length: 500 }, newOneTimeCode)).size).toBe(500);
});

it('is stored so that it cannot be read, and known again however it is typed', () => {
  const stored = hashOneTimeCode('K7QM-2XPD-9RTW-H4VZ');
  expect(stored).not.toContain('K7QM');
  expect(hashOneTimeCode(' k7qm 2xpd9rtw-h4vz ')).toBe(stored);
  expect(hashOneTimeCode('K7QM-2XPD-9RTW-H4VY')).not.toBe(stored);
});

it('lives 24 hours', () => {
  expect(oneTimeCodeExpiry(new Date('2026-11-25T10:00:00Z')).toISOString()).toBe('2026-11-26T10:00:00.000Z');
});

it('compares whole texts', () => {
  expect(sameText('harvest-home', 'harvest-home')).toBe(true);
  expect(sameText('harvest-home', 'harvest-hom')).toBe(false);
  expect(sameText('', 'harvest-home')).toBe(false);
});
