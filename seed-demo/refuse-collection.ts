import type Database from 'better-sqlite3';

/** Tables in which anything means that somebody's work is in the database. */
const WORK = ['Accession', 'Lot', 'Store', 'User', 'ImportJob'] as const;

/**
 * The demo and the large collection go only into an empty database, so that they can never touch a real one.
 *
 * @param database  open database, migrated or not
 * @throws Error when there is anything in it that a steward may have written
 * Checked in tests/seed-demo/load-demo.test.ts
 */
export function refuseCollection(database: Database.Database): void {
  const isTable = database.prepare(`SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = ?`);
  for (const table of WORK) {
    if (isTable.get(table) && database.prepare(`SELECT 1 FROM "${table}" LIMIT 1`).get()) {
      throw new Error(
        'This data folder already holds a collection. Choose an empty one (DATA_DIR): nothing was written.',
      );
    }
  }
}
