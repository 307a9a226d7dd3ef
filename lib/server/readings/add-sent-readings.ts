import 'server-only';
import type Database from 'better-sqlite3';
import { readingStore } from '@/lib/domain/logger/reading-store';
import type { SentReadings } from '@/lib/schemas/sent-readings';
import { AppError } from '../app-error';
import { hashIssuedSecret } from '../auth/issued-secret';
import { auditInBulk, inBulkTransaction, markForJudgingInBulk } from '../database/bulk-transaction';
import { reader } from '../database/connections';
import { explainFailure } from '../database/explain-failure';
import { enqueueWrite } from '../database/write-queue';
import { judgeSoon } from '../judging/judge-soon';
import { lotsEverIn } from '../stores/lots-in-store';
import { type AddedReadings, addReadings } from './add-readings';
import { giveWay } from './read-logger-file';

export interface KnownToken {
  id: string;
  name: string;
  storeId: string;
  storeName: string;
  byId: string;
}

/** The token's use is noted at most this often, so that a busy script does not write for nothing. */
const NOTED_EVERY_MS = 60_000;

/** Whose token it is; null when there is none or it was revoked. */
export async function findReadingToken(secret: string): Promise<KnownToken | null> {
  const token = await reader().readingToken.findUnique({
    where: { hash: hashIssuedSecret(secret) },
    select: { id: true, name: true, storeId: true, byId: true, revokedAt: true, store: { select: { name: true } } },
  });
  if (!token || token.revokedAt) return null;
  const { store, revokedAt: _, ...known } = token;
  return { ...known, storeName: store.name };
}

/**
 * Adds what a script has sent: all of it or nothing, only instants that the store lacks. Its lots are marked in the same
 * transaction and judged a little later, because a script may send every minute.
 *
 * Not a command: who acts is a token, not a person. The audit names it.
 *
 * @throws AppError 'not-allowed' when the token was revoked meanwhile
 * Checked in tests/server/readings/post-readings.test.ts
 */
export async function addSentReadings(token: KnownToken, sent: SentReadings['readings']): Promise<AddedReadings> {
  const store = readingStore();
  for (const [index, { at, temperatureC, humidityPercent }] of sent.entries()) {
    const humidity = humidityPercent == null ? Number.NaN : Math.min(1, Math.max(0, humidityPercent / 100));
    store.add(at, temperatureC, humidity, index + 1);
  }
  const readings = store.inOrderOfTime(() => undefined);
  try {
    const outcome = await enqueueWrite(() =>
      inBulkTransaction(async (bulk) => {
        const lots = await lotsEverIn(reader(), token.storeId);
        noteUse(bulk, token);
        const importId = importOf(bulk, token);
        const added = await addReadings(bulk, token.storeId, importId, readings, { giveWay });
        if (added.added === 0) return added;
        bulk
          .prepare(
            `UPDATE "ReadingImport" SET "rows" = "rows" + ?, "added" = "added" + ?, "finishedAt" = ? WHERE "id" = ?`,
          )
          .run(sent.length, added.added, new Date().toISOString(), importId);
        auditInBulk(bulk, { id: `token:${token.id}`, name: `script ${token.name}` }, 'post-readings', {
          entity: 'store',
          entityId: token.storeId,
          summary: `Added ${added.added} readings of store ${token.storeName}, sent by script ${token.name}`,
          after: { importId, tokenId: token.id, ...added },
        });
        markForJudgingInBulk(bulk, lots);
        return added;
      }),
    );
    if (outcome.added > 0) judgeSoon();
    return outcome;
  } catch (error) {
    throw explainFailure(error) ?? error;
  }
}

function noteUse(bulk: Database.Database, token: KnownToken): void {
  const { revokedAt, lastUsedAt } = bulk
    .prepare<[string], { revokedAt: string | null; lastUsedAt: string | null }>(
      `SELECT "revokedAt", "lastUsedAt" FROM "ReadingToken" WHERE "id" = ?`,
    )
    .get(token.id) as { revokedAt: string | null; lastUsedAt: string | null };
  if (revokedAt) throw new AppError('not-allowed', 'This token was revoked.');
  if (lastUsedAt && Date.now() - Date.parse(lastUsedAt) < NOTED_EVERY_MS) return;
  bulk.prepare(`UPDATE "ReadingToken" SET "lastUsedAt" = ? WHERE "id" = ?`).run(new Date().toISOString(), token.id);
}

/** The import that a token's readings belong to: one, until it is taken back; then a new one. */
function importOf(bulk: Database.Database, token: KnownToken): number {
  const open = bulk
    .prepare<[string], number>(
      `SELECT "id" FROM "ReadingImport" WHERE "tokenId" = ? AND "status" = 'imported' ORDER BY "id" DESC LIMIT 1`,
    )
    .pluck()
    .get(token.id);
  if (open !== undefined) return open;
  const { lastInsertRowid } = bulk
    .prepare(
      `INSERT INTO "ReadingImport" ("storeId", "kind", "tokenId", "status", "byId", "createdAt") VALUES (?, 'script', ?, 'imported', ?, ?)`,
    )
    .run(token.storeId, token.id, token.byId, new Date().toISOString());
  return Number(lastInsertRowid);
}
