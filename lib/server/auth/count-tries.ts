import 'server-only';
import { createHash } from 'node:crypto';
import type { PrismaClient } from '@/generated/prisma/client';
import { AppError } from '../app-error';
import { connections } from '../database/connections';
import { explainFailure } from '../database/explain-failure';
import { enqueueWrite } from '../database/write-queue';

/**
 * Slows down guessing of passwords and codes. Tries are kept in the database, so that a restart forgives nothing, under
 * a hash of the name: people do type their password into the wrong box.
 *
 * A try is counted before the password is looked at and forgiven when it was right, so that a hundred guesses sent at
 * once are counted as a hundred. Two counts: one for the name from this address, and a wider one for the name from
 * anywhere, because an address can be claimed falsely. No person acts yet, so this is no command and leaves no audit.
 */
export interface Tries {
  /** What is tried: guesses at one thing do not count against another. */
  purpose: 'sign-in' | 'password-code' | 'setup-code' | 'own-password';
  /** The sign-in name as typed, or the person's id. */
  name: string;
  /** Network address that the request claims; '' if unknown. */
  address: string;
}

const TRIES_FROM_ONE_ADDRESS = 5;
const TRIES_FROM_ANYWHERE = 20;
const FIRST_WAIT_SECONDS = 60;
const LONGEST_WAIT_SECONDS = 900;
const FORGOTTEN_AFTER_MS = 3_600_000;

/**
 * Counts one try, or refuses it. The first wait is a minute; each further wrong try doubles it, up to 15 minutes. An
 * hour without tries forgives all.
 *
 * @param now  milliseconds since 1970
 * @throws AppError 'refused' saying how long to wait (the refused try itself is not counted), or the database's trouble
 * Checked in tests/server/auth/count-tries.test.ts
 */
export async function countTry(tries: Tries, now: number = Date.now()): Promise<void> {
  const waitMs = await inQueue((writer) =>
    writer.$transaction(async (tx) => {
      await tx.rateLimit.deleteMany({ where: { lastRequest: { lt: now - FORGOTTEN_AFTER_MS } } });
      const counts = countsOf(tries);
      const rows = await tx.rateLimit.findMany({ where: { key: { in: counts.map((count) => count.key) } } });
      const wait = Math.max(
        0,
        ...counts.map(({ key, allowed }) => {
          const row = rows.find((found) => found.key === key);
          return row ? Number(row.lastRequest) + waitAfter(row.count, allowed) - now : 0;
        }),
      );
      if (wait > 0) return wait;
      for (const { key } of counts) {
        await tx.rateLimit.upsert({
          where: { key },
          create: { id: key, key, count: 1, lastRequest: now },
          update: { count: { increment: 1 }, lastRequest: now },
        });
      }
      return 0;
    }),
  );
  if (waitMs > 0) {
    throw new AppError('refused', `Too many wrong tries. Wait ${inWords(waitMs)}, then try again.`);
  }
}

/** Forgets the tries of somebody who got in. */
export async function forgiveTries(tries: Tries): Promise<void> {
  const keys = countsOf(tries).map((count) => count.key);
  await inQueue((writer) => writer.rateLimit.deleteMany({ where: { key: { in: keys } } }));
}

async function inQueue<Result>(write: (writer: PrismaClient) => Promise<Result>): Promise<Result> {
  try {
    return await enqueueWrite(async () => write(connections().writer));
  } catch (error) {
    throw explainFailure(error) ?? error;
  }
}

function countsOf({ purpose, name, address }: Tries) {
  const key = (...parts: string[]) => createHash('sha256').update(JSON.stringify(parts)).digest('hex');
  const known = name.trim().toLowerCase();
  return [
    { key: `${purpose}:address:${key(known, address)}`, allowed: TRIES_FROM_ONE_ADDRESS },
    { key: `${purpose}:anywhere:${key(known)}`, allowed: TRIES_FROM_ANYWHERE },
  ];
}

function waitAfter(count: number, allowed: number): number {
  if (count < allowed) return 0;
  return Math.min(FIRST_WAIT_SECONDS * 2 ** (count - allowed), LONGEST_WAIT_SECONDS) * 1000;
}

function inWords(milliseconds: number): string {
  const seconds = Math.ceil(milliseconds / 1000);
  if (seconds < 90) return seconds === 1 ? '1 second' : `${seconds} seconds`;
  return `${Math.ceil(seconds / 60)} minutes`;
}

/**
 * The address that a request comes from. Our TLS door writes it anew for every request; without the door it is what the
 * proxy in front says, or the connection's own.
 */
export const claimedAddress = (headers: Headers): string =>
  headers.get('x-forwarded-for')?.split(',')[0]?.trim().slice(0, 64) ?? '';
