import 'server-only';
import type Database from 'better-sqlite3';
import type { Person } from '../auth/roles';

/**
 * What the writers of an import share: prepared inserts, numbers, the audit line of each record. Everything runs in the
 * one transaction that the import command has open on this connection.
 */
export interface BulkWriter {
  database: Database.Database;
  person: Person;
  importId: string;
  now: string;
  today: string;
  insert(table: string, row: Record<string, unknown>): void;
  nextNumber(series: string, digits: number, isTaken: (number: string) => boolean): string;
  audit(entity: string, entityId: string, summary: string): void;
}

export function createBulkWriter(
  database: Database.Database,
  person: Person,
  importId: string,
  today: string,
): BulkWriter {
  const now = new Date().toISOString();
  const statements = new Map<string, Database.Statement>();
  const prepare = (sql: string) => {
    let statement = statements.get(sql);
    if (!statement) {
      statement = database.prepare(sql);
      statements.set(sql, statement);
    }
    return statement;
  };
  const insert = (table: string, row: Record<string, unknown>) => {
    const columns = Object.keys(row);
    const sql = `INSERT INTO "${table}" (${columns.map((column) => `"${column}"`).join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`;
    prepare(sql).run(...columns.map((column) => row[column] ?? null));
  };
  return {
    database,
    person,
    importId,
    now,
    today,
    insert,
    nextNumber: (series, digits, isTaken) => {
      const row = prepare(`SELECT "last" FROM "NumberSeries" WHERE "series" = ?`).get(series) as
        | { last: number }
        | undefined;
      let last = (row?.last ?? 0) + 1;
      const format = () => `${series}-${String(last).padStart(digits, '0')}`;
      while (isTaken(format())) last += 1;
      prepare(
        `INSERT INTO "NumberSeries" ("series", "last") VALUES (?, ?) ON CONFLICT ("series") DO UPDATE SET "last" = excluded."last"`,
      ).run(series, last);
      return format();
    },
    audit: (entity, entityId, summary) =>
      insert('AuditEntry', {
        at: now,
        byId: person.id,
        byName: person.name,
        command: 'run-import',
        entity,
        entityId,
        summary,
        after: JSON.stringify({ importId }),
      }),
  };
}
