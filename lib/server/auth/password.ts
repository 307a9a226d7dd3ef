import 'server-only';
import { randomBytes } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';

/**
 * Argon2id, 19 MiB, two passes, one lane: the OWASP password storage cheat sheet's first choice, about a tenth of a
 * second here. (The package's default algorithm is Argon2id; its enum cannot be named under isolatedModules.)
 */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/** The text to store for a password; its salt and cost are in it. Checked in tests/server/auth/password.test.ts */
export const hashPassword = (password: string): Promise<string> => hash(password.normalize('NFKC'), COST);

/** True when the password is the stored one; false for any other and for a stored text that is no such hash. */
export async function verifyPassword(stored: string, password: string): Promise<boolean> {
  return verify(stored, password.normalize('NFKC')).catch(() => false);
}

/** A hash that no password opens: for an account whose owner has not chosen one yet, checked as slowly as any other. */
export const hashOfNoPassword = (): Promise<string> => hashPassword(randomBytes(32).toString('base64url'));
