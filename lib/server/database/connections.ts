import 'server-only';
import { existsSync } from 'node:fs';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import Database from 'better-sqlite3';
import { PrismaClient } from '@/generated/prisma/client';
import { AppError } from '../app-error';
import { databaseFile, environment } from '../env';
import { explainReads } from './explain-reads';

/**
 * Four connections to one SQLite file (WAL, foreign keys on, ten seconds' patience):
 * - `reader` answers every question and never writes;
 * - `rows` is plain better-sqlite3, read-only, for the many rows that a computation takes in;
 * - `writer` carries commands, one at a time, behind the queue in write-queue.ts, because a plain query made while an
 *   interactive transaction is open on the same client would join it;
 * - `bulk` is plain better-sqlite3 for many rows at once (imports, judgements), inside the same queue.
 * They live on globalThis so that the development server does not open more at every reload.
 */
export interface Connections {
  file: string;
  reader: PrismaClient;
  writer: PrismaClient;
  bulk: Database.Database;
  rows: Database.Database;
}

const holder = globalThis as typeof globalThis & { hilumConnections?: Connections };

/** SQLite's default in WAL mode may lose the last commits in a power cut; what was acknowledged here is on the disk. */
class DurableSqlite extends PrismaBetterSqlite3 {
  override async connect() {
    const adapter = await super.connect();
    await adapter.executeScript('PRAGMA synchronous = FULL');
    return adapter;
  }
}

function openPrisma(file: string): PrismaClient {
  return new PrismaClient({
    adapter: new DurableSqlite({
      url: `file:${file}`,
      timeout: environment().HILUM_BUSY_TIMEOUT_MS,
      fileMustExist: true,
    }),
    transactionOptions: { maxWait: 30_000, timeout: 120_000 },
  });
}

export function connections(): Connections {
  const file = databaseFile();
  if (!existsSync(file)) {
    throw new AppError(
      'database-missing',
      `The collection's file (hilum.db in the data folder) is not there. If it was moved, put it back; otherwise stop Hilum and start it again with 'npm run up'.`,
    );
  }
  if (holder.hilumConnections?.file !== file) {
    const bulk = new Database(file, { timeout: environment().HILUM_BUSY_TIMEOUT_MS, fileMustExist: true });
    bulk.pragma('synchronous = FULL');
    const rows = new Database(file, {
      timeout: environment().HILUM_BUSY_TIMEOUT_MS,
      fileMustExist: true,
      readonly: true,
    });
    holder.hilumConnections = { file, reader: explainReads(openPrisma(file)), writer: openPrisma(file), bulk, rows };
  }
  return holder.hilumConnections as Connections;
}

export const reader = (): PrismaClient => connections().reader;

/** Closes all connections: tests and command-line programs only. */
export async function closeConnections(): Promise<void> {
  const open = holder.hilumConnections;
  holder.hilumConnections = undefined;
  if (!open) return;
  await Promise.all([open.reader.$disconnect(), open.writer.$disconnect()]);
  open.bulk.close();
  open.rows.close();
}
