import 'server-only';
import { isAPIError } from 'better-auth/api';
import { AppError } from '../app-error';
import { connections } from '../database/connections';
import { explainFailure } from '../database/explain-failure';
import { isRole, type Person } from './roles';
import { signInLibrary } from './sign-in-library';

export interface Session {
  id: string;
  person: Person;
}

/**
 * The session that a request's cookie belongs to.
 *
 * @param headers  the request's headers: its cookie, and whether it came by https
 * @returns null without a cookie, with a forged or ended one, after it expired, and for somebody who is blocked
 * @throws AppError when the database cannot be read
 * Checked in tests/server/auth/sign-in.test.ts
 */
export async function readSession(headers: Headers): Promise<Session | null> {
  connections();
  const found = await orExplain(
    signInLibrary(headers).api.getSession({
      headers: new Headers({ cookie: headers.get('cookie') ?? '' }),
      query: { disableRefresh: true },
    }),
  );
  if (!found || found.user.banned || !isRole(found.user.role)) return null;
  return { id: found.session.id, person: { id: found.user.id, name: found.user.name, role: found.user.role } };
}

const WRONG = 'That name and password do not go together. Check both, or ask a steward for a code.';

/**
 * Checks a password and starts a session; within a request its cookie is set.
 *
 * @param headers  the request's headers: address and device are kept with the session
 * @returns whose session it is
 * @throws AppError 'refused': the same words for an unknown name and a wrong password; others for a blocked person,
 *   but only once the password was right
 */
export async function startSession(signInName: string, password: string, headers: Headers): Promise<Person> {
  try {
    const { user } = await signInLibrary(headers).api.signInUsername({
      headers,
      body: { username: signInName, password },
    });
    const role = (user as { role?: unknown }).role;
    if (!isRole(role)) throw new AppError('refused', WRONG);
    return { id: user.id, name: user.name, role };
  } catch (error) {
    if (!isAPIError(error) || error.statusCode >= 500) throw explained(error);
    if (error.body?.code === 'BANNED_USER') {
      throw new AppError('refused', 'This account is blocked. Ask a steward to open it again.');
    }
    throw new AppError('refused', WRONG);
  }
}

/** Ends the session of this request's cookie and, within a request, takes the cookie away. */
export async function endSession(headers: Headers): Promise<void> {
  await orExplain(signInLibrary(headers).api.signOut({ headers }));
}

async function orExplain<Result>(promise: Promise<Result>): Promise<Result> {
  try {
    return await promise;
  } catch (error) {
    throw explained(error);
  }
}

/** The library wraps what the database threw; its cause has the code that can be said in words. */
function explained(error: unknown): unknown {
  return explainFailure(error) ?? error;
}
