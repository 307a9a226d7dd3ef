import 'server-only';
import { recordSignIn } from '../commands/record-sign-in';
import { recordSignOut } from '../commands/record-sign-out';
import { claimedAddress, countTry, forgiveTries } from './count-tries';
import type { Person } from './roles';
import { endSession, readSession, startSession } from './sessions';

/**
 * Signs somebody in by name and password; within a request the cookie is set.
 *
 * @throws AppError 'refused': wrong name or password (the same words), blocked, or too many tries and how long to wait
 * Checked in tests/server/auth/sign-in.test.ts
 */
export async function signIn(signInName: string, password: string, requestHeaders: Headers): Promise<Person> {
  const tries = { purpose: 'sign-in', name: signInName, address: claimedAddress(requestHeaders) } as const;
  await countTry(tries);
  const person = await startSession(signInName.trim().toLowerCase(), password, requestHeaders);
  await forgiveTries(tries);
  await recordSignIn(person, {});
  return person;
}

/** Ends the session of this request, if there is one. */
export async function signOut(requestHeaders: Headers): Promise<void> {
  const session = await readSession(requestHeaders);
  await endSession(requestHeaders);
  if (session) await recordSignOut(session.person, {});
}
