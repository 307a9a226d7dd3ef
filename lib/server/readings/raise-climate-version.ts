import type Database from 'better-sqlite3';

/**
 * Makes known that a store's readings have changed. A version over 0 says that the store is logged, under 0 that it was
 * and no reading is left: so that its target, or the store around it, holds again. The size only ever grows, so that no
 * climate kept in memory is taken for another.
 *
 * Checked in tests/server/readings/take-back-readings.test.ts
 */
export function raiseClimateVersion(bulk: Database.Database, storeId: string): void {
  bulk
    .prepare(
      `UPDATE "Store" SET "climateVersion" = (abs("climateVersion") + 1) *
         CASE WHEN EXISTS (SELECT 1 FROM "Reading" r WHERE r."storeId" = "Store"."id" AND NOT r."takenBack") THEN 1 ELSE -1 END
       WHERE "id" = ?`,
    )
    .run(storeId);
}
