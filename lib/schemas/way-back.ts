/** Where somebody wanted to go before they had to sign in. */
import { z } from 'zod';

/** Longer addresses than any page of ours has are nobody's way back. */
const LONGEST_WAY = 2000;
const OUR_ADDRESS = 'http://hilum.invalid';

/**
 * An address within the app, or '/' for anything else: a link to the sign-in page must not lead to another site.
 *
 * Checked in tests/schemas/way-back.test.ts
 */
export const wayBack = z
  .string()
  .max(LONGEST_WAY)
  .refine((address) => /^\/(?![/\\])/.test(address) && new URL(address, OUR_ADDRESS).origin === OUR_ADDRESS)
  .transform((address) => new URL(address, OUR_ADDRESS))
  .transform((url) => `${url.pathname}${url.search}`)
  .catch('/');

/** The sign-in page, which leads on to `address` afterwards. */
export function signInPath(address: string | null): string {
  const back = wayBack.parse(address);
  return back === '/' ? '/sign-in' : `/sign-in?then=${encodeURIComponent(back)}`;
}
