import type Database from 'better-sqlite3';
import type { Person } from '../auth/roles';
import type { AuditRecord } from '../commands/command';
import { connections } from './connections';

/**
 * One transaction on the bulk connection that may give way between rows. Belongs inside the write queue, so that nothing
 * else writes on that connection meanwhile.
 */
export async function inBulkTransaction<Result>(task: (bulk: Database.Database) => Promise<Result>): Promise<Result> {
  const { bulk } = connections();
  bulk.exec('BEGIN IMMEDIATE');
  try {
    const result = await task(bulk);
    bulk.exec('COMMIT');
    return result;
  } catch (error) {
    if (bulk.inTransaction) bulk.exec('ROLLBACK');
    throw error;
  }
}

/** An audit entry in the transaction that is open on the bulk connection. */
export function auditInBulk(
  bulk: Database.Database,
  person: Pick<Person, 'id' | 'name'>,
  command: string,
  { entity, entityId, summary, before, after }: AuditRecord,
): void {
  const json = (value: unknown) => (value === undefined ? null : JSON.stringify(value));
  bulk
    .prepare(
      `INSERT INTO "AuditEntry" ("at", "byId", "byName", "command", "entity", "entityId", "summary", "before", "after")
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    )
    .run(
      new Date().toISOString(),
      person.id,
      person.name,
      command,
      entity,
      entityId,
      summary,
      json(before),
      json(after),
    );
}

/** As markForJudging, in the transaction that is open on the bulk connection. */
export function markForJudgingInBulk(bulk: Database.Database, lots: readonly string[]): void {
  bulk
    .prepare(`UPDATE "LotJudgement" SET "judgedOn" = '' WHERE "lotId" IN (SELECT "value" FROM json_each(?))`)
    .run(JSON.stringify(lots));
}
