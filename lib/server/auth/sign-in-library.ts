import 'server-only';
import { betterAuth } from 'better-auth';
import { prismaAdapter } from 'better-auth/adapters/prisma';
import { nextCookies } from 'better-auth/next-js';
import { createAccessControl } from 'better-auth/plugins/access';
import { admin } from 'better-auth/plugins/admin';
import { username } from 'better-auth/plugins/username';
import type { PrismaClient } from '@/generated/prisma/client';
import { isSignInName, SIGN_IN_NAME_LENGTH } from '../../schemas/person';
import { reader } from '../database/connections';
import { enqueueWrite } from '../database/write-queue';
import { environment } from '../env';
import { log } from '../log';
import { hashPassword, verifyPassword } from './password';
import { sessionSecret } from './secret';

/**
 * The sign-in library as this app uses it: it checks a password, makes, reads and ends sessions, and signs the cookie.
 * Nothing else of it is reachable: its HTTP handler is not mounted, so its many routes do not exist, and people are
 * made and changed by commands that write the same tables with an audit entry (docs/decisions/011).
 */
const SESSION_DAYS = 30;
const WRITES = /^(create|update|upsert|delete)/;

type Library = ReturnType<typeof build>;
const libraries = { secure: new WeakMap<PrismaClient, Library>(), plain: new WeakMap<PrismaClient, Library>() };

/**
 * @param requestHeaders  of whoever asks: over https the cookie is marked Secure, and one that is not is no session
 */
export function signInLibrary(requestHeaders: Headers): Library {
  const secure = cameByHttps(requestHeaders);
  const made = libraries[secure ? 'secure' : 'plain'];
  const client = reader();
  const library = made.get(client) ?? build(client, secure);
  made.set(client, library);
  return library;
}

/**
 * Behind our own door the door says how a request came: https for phones, plain http from this computer itself, where a
 * cookie marked Secure might not come back. Without it the address that people use says it.
 */
function cameByHttps(requestHeaders: Headers): boolean {
  const { HILUM_TLS_PORT, HILUM_ADDRESS } = environment();
  if (HILUM_TLS_PORT !== undefined) return requestHeaders.get('x-forwarded-proto') === 'https';
  return HILUM_ADDRESS?.startsWith('https:') ?? false;
}

function build(client: PrismaClient, secure: boolean) {
  const address = environment().HILUM_ADDRESS;
  const access = createAccessControl({ session: ['read'] });
  const role = access.newRole({ session: ['read'] });
  return betterAuth({
    appName: 'Hilum',
    baseURL: address ?? `http://127.0.0.1:${environment().PORT}`,
    secret: sessionSecret(),
    database: prismaAdapter(withQueuedWrites(client), { provider: 'sqlite' }),
    telemetry: { enabled: false },
    emailAndPassword: {
      enabled: false,
      disableSignUp: true,
      password: { hash: hashPassword, verify: ({ hash, password }) => verifyPassword(hash, password) },
    },
    // Thirty days from signing in, whatever happens between: a page never has to write to be read.
    session: { expiresIn: SESSION_DAYS * 86_400, disableSessionRefresh: true },
    // Its limiter works only in its HTTP handler, which is not mounted: count-tries.ts does that work.
    rateLimit: { enabled: false },
    advanced: {
      cookiePrefix: 'hilum',
      useSecureCookies: secure,
    },
    logger: { level: 'error', log: (level, message) => log[level]({ from: 'sign-in library' }, message) },
    plugins: [
      username({
        minUsernameLength: SIGN_IN_NAME_LENGTH.min,
        maxUsernameLength: SIGN_IN_NAME_LENGTH.max,
        usernameValidator: isSignInName,
        validationOrder: { username: 'post-normalization' },
      }),
      // Refuses a session to somebody who is blocked.
      admin({
        ac: access,
        roles: { visitor: role, volunteer: role, steward: role },
        defaultRole: 'visitor',
        adminRoles: ['steward'],
      }),
      nextCookies(),
    ],
  });
}

/**
 * The library writes by itself, and a write beside an open command would wait for it by blocking the thread. So each
 * of its writes takes its turn in the queue. It must therefore never be called from inside a queued task.
 */
function withQueuedWrites(client: PrismaClient): PrismaClient {
  const queued = client.$extends({
    name: 'queued-writes',
    query: {
      $allOperations: ({ operation, args, query }) =>
        WRITES.test(operation) ? enqueueWrite(async () => query(args)) : query(args),
    },
  });
  return queued as unknown as PrismaClient;
}
