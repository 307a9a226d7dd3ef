import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { sessionSecret } from '@/lib/server/auth/secret';

let directory: string;
beforeEach(() => {
  directory = mkdtempSync(path.join(tmpdir(), 'hilum-secret-'));
});
afterEach(() => rmSync(directory, { recursive: true, force: true }));

it('makes a secret once and keeps it', () => {
  const secret = sessionSecret(directory);
  expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
  expect(sessionSecret(directory)).toBe(secret);
  expect(readFileSync(path.join(directory, 'secret'), 'utf8')).toBe(secret);
});

it('gives each data folder its own', () => {
  expect(sessionSecret(path.join(directory, 'one'))).not.toBe(sessionSecret(path.join(directory, 'two')));
});

it('lets only the owner read the file, also one that was left open', () => {
  const file = path.join(directory, 'secret');
  const secret = sessionSecret(directory);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  rmSync(file);
  writeFileSync(file, secret, { mode: 0o644 });
  sessionSecret(directory);
  expect(statSync(file).mode & 0o777).toBe(0o600);
});

it('refuses to sign with half a secret', () => {
  writeFileSync(path.join(directory, 'secret'), 'short');
  expect(() => sessionSecret(directory)).toThrow(/damaged/);
});
