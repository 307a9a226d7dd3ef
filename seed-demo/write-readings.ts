import type Database from 'better-sqlite3';
import { enqueueWrite } from '../lib/server/database/write-queue';
import { addReadings } from '../lib/server/readings/add-readings';
import type { Readings } from './generators/store-readings';

/** The ReadingImport of readings that no import brought. */
const NO_IMPORT = 0;

/** Puts a logger's readings into a store, with their daily sums, and makes known that its climate has changed. */
export async function writeReadings(bulk: Database.Database, storeId: string, readings: Readings): Promise<void> {
  await enqueueWrite(async () => {
    bulk.exec('BEGIN IMMEDIATE');
    await addReadings(bulk, storeId, NO_IMPORT, readings);
    bulk.exec('COMMIT');
  });
}
