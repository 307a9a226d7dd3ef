import 'server-only';
import { hashIssuedSecret } from '../auth/issued-secret';
import { connections, reader } from '../database/connections';
import { enqueueWrite } from '../database/write-queue';
import { log } from '../log';

/** A calendar program asks every hour; that it asked is noted once a day, so that nothing is written for nothing. */
const NOTED_EVERY_MS = 24 * 3_600_000;

export interface OpenFeed {
  id: string;
  lastUsedAt: Date | null;
}

/** Whose secret it is; null when there is none or it was revoked. */
export async function findOpenFeed(secret: string): Promise<OpenFeed | null> {
  return reader().calendarFeed.findUnique({
    where: { hash: hashIssuedSecret(secret), revokedAt: null },
    select: { id: true, lastUsedAt: true },
  });
}

/**
 * Notes that a feed is read, so that whoever looks for forgotten ones sees which are in use. Not a command: nobody acts.
 * Reading goes on when it fails, as while the disk is full.
 */
export async function noteFeedRead({ id, lastUsedAt }: OpenFeed, now: Date): Promise<void> {
  if (lastUsedAt && now.getTime() - lastUsedAt.getTime() < NOTED_EVERY_MS) return;
  try {
    await enqueueWrite(async () => {
      await connections().writer.calendarFeed.update({ where: { id }, data: { lastUsedAt: now } });
    });
  } catch (error) {
    log.warn({ error }, 'noting that a calendar was read failed');
  }
}
