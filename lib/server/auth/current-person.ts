import 'server-only';
import { headers } from 'next/headers';
import { cache } from 'react';
import { environment, isLoopbackOnly } from '../env';
import { refuseForeignRequest } from './refuse-foreign-request';
import type { Person } from './roles';
import { readSession, type Session } from './sessions';
import { SINGLE_STEWARD } from './single-steward';

/** Who is asking, or null; looked up once a request. */
export const currentPerson = cache(async (): Promise<Person | null> => personOf(await headers()));

/** The session of this request, or null: always null on loopback, where nobody signs in. */
export const currentSession = cache(async (): Promise<Session | null> => sessionOf(await headers()));

/**
 * On loopback the app's single steward, otherwise whoever the session belongs to. The proxy has refused foreign names
 * and pages before; it is asked again here, because it is only a file in front of the app.
 *
 * Checked in tests/server/auth/current-person.test.ts
 */
export async function personOf(requestHeaders: Headers): Promise<Person | null> {
  if (isForeign(requestHeaders)) return null;
  if (isLoopbackOnly()) return SINGLE_STEWARD;
  return (await sessionOf(requestHeaders))?.person ?? null;
}

async function sessionOf(requestHeaders: Headers): Promise<Session | null> {
  return isLoopbackOnly() || isForeign(requestHeaders) ? null : readSession(requestHeaders);
}

function isForeign(requestHeaders: Headers): boolean {
  const facts = { host: requestHeaders.get('host'), origin: requestHeaders.get('origin') };
  const rules = { loopbackOnly: isLoopbackOnly(), publicAddress: environment().HILUM_ADDRESS };
  return refuseForeignRequest(facts, rules) !== null;
}
