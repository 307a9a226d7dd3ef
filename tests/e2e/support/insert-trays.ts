import path from 'node:path';
import Database from 'better-sqlite3';
import { type InsertedTray, insertTray, type TrayToInsert } from '../../support/insert-tray';

/**
 * Trays in a bank's file, before its server has looked at them. Each stands on the next lot of the collection unless one
 * is named, and takes no seed out of it.
 */
export function insertTrays(bankDirectory: string, trays: readonly Partial<TrayToInsert>[]): InsertedTray[] {
  const database = new Database(path.join(bankDirectory, 'hilum.db'));
  const lots = database.prepare<[], string>('SELECT "number" FROM "Lot" ORDER BY "number"').pluck().all();
  try {
    return trays.map((tray, index) =>
      insertTray(database, { takesSeed: false, lotNumber: lots[index % lots.length] as string, ...tray }),
    );
  } finally {
    database.close();
  }
}

/** What the server holds of a tray: each count that nothing replaces, as 'day dish: normal/abnormal/hard/fresh/dead'. */
export function countsHeld(bankDirectory: string, trayNumber: string): string[] {
  const database = new Database(path.join(bankDirectory, 'hilum.db'), { readonly: true });
  try {
    const rows = database
      .prepare<
        [string],
        { id: string; on: string; position: number; counted: number; found: string; replaces: string }
      >(
        `SELECT c."id", c."on", d."position", c."counted", c."replaces",
          c."normal" || '/' || c."abnormal" || '/' || c."hard" || '/' || c."fresh" || '/' || c."dead" AS "found"
        FROM "TrayCount" c JOIN "TrayDish" d ON d."id" = c."dishId" JOIN "Tray" t ON t."id" = c."trayId"
        WHERE t."number" = ? ORDER BY c."on", d."position", c."id"`,
      )
      .all(trayNumber);
    const replaced = new Set(rows.flatMap(({ replaces }) => JSON.parse(replaces) as string[]));
    return rows
      .filter(({ id, counted }) => !replaced.has(id) && counted === 1)
      .map(({ on, position, found }) => `${on} ${position}: ${found}`);
  } finally {
    database.close();
  }
}
