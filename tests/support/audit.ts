import { connections } from '@/lib/server/database/connections';

export interface AuditLine {
  command: string;
  entity: string;
  entityId: string;
  byName: string;
  summary: string;
}

/** Every line of the audit, oldest first. */
function auditLines(): AuditLine[] {
  return connections()
    .bulk.prepare<[], AuditLine>(
      `SELECT "command", "entity", "entityId", "byName", "summary" FROM "AuditEntry" ORDER BY "id"`,
    )
    .all();
}

export const lastAuditLine = (): AuditLine | undefined => auditLines().at(-1);

/** How many rows a table has. */
export const countRows = (table: string): number =>
  (connections().bulk.prepare(`SELECT COUNT(*) AS n FROM "${table}"`).get() as { n: number }).n;
