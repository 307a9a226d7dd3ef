import { expect, it } from 'vitest';
import { hashOfNoPassword, hashPassword, verifyPassword } from '@/lib/server/auth/password';

it('stores Argon2id with 19 MiB and two passes, salted anew each time', async () => {
  const stored = await hashPassword('three dry bean pods');
  expect(stored).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  expect(await hashPassword('three dry bean pods')).not.toBe(stored);
});

it('opens to the same password only', async () => {
  const stored = await hashPassword('three dry bean pods');
  expect(await verifyPassword(stored, 'three dry bean pods')).toBe(true);
  expect(await verifyPassword(stored, 'three dry bean pod')).toBe(false);
  expect(await verifyPassword(stored, '')).toBe(false);
});

it('takes an accent typed as one character or as two', async () => {
  const stored = await hashPassword('pur\u00e9e de f\u00e8ves');
  expect(await verifyPassword(stored, 'pure\u0301e de fe\u0300ves')).toBe(true);
});

it('opens to nothing when what is stored is no hash', async () => {
  expect(await verifyPassword('', '')).toBe(false);
  expect(await verifyPassword('plain', 'plain')).toBe(false);
});

it('makes a hash that opens to nothing for an account without a password', async () => {
  const stored = await hashOfNoPassword();
  expect(stored).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  expect(await verifyPassword(stored, '')).toBe(false);
});
