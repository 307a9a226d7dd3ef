import 'server-only';
import { createHash, randomInt, timingSafeEqual } from 'node:crypto';

/**
 * Codes that a steward hands to a person, who sets a password with it. Sixteen characters out of 31 are 79 bits: no
 * guessing finds one in the day that it lives, so a plain SHA-256 is enough to keep the stored form useless.
 * Letters and digits that look alike (0 O, 1 I L) are left out.
 */
const ALPHABET = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
const GROUPS = 4;
const GROUP_LENGTH = 4;
const HOURS_VALID = 24;

/** A new code, 'K7QM-2XPD-9RTW-H4VZ'. Checked in tests/server/auth/one-time-code.test.ts */
export function newOneTimeCode(): string {
  const group = () => Array.from({ length: GROUP_LENGTH }, () => ALPHABET[randomInt(ALPHABET.length)]).join('');
  return Array.from({ length: GROUPS }, group).join('-');
}

/** What is stored of a code. Capitals, spaces and hyphens make no difference. */
export function hashOneTimeCode(code: string): string {
  return createHash('sha256').update(code.toUpperCase().replace(/[\s-]/g, '')).digest('hex');
}

/** When a code made at `now` stops working. */
export const oneTimeCodeExpiry = (now: Date): Date => new Date(now.getTime() + HOURS_VALID * 3_600_000);

/** The key under which a person's code is kept in Verification: one live code a person. */
export const passwordCodeKey = (personId: string): string => `password-code:${personId}`;

/** Compares two texts in a time that does not tell how much of them agrees. */
export function sameText(one: string, other: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(one), digest(other));
}
