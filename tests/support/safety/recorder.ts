import type Database from 'better-sqlite3';

/**
 * A flight recorder for test banks: triggers note every row in the order and the transaction in which it was written,
 * so that what a killed process leaves can be told transaction by transaction. Rows of a transaction stand together,
 * because SQLite has one writer; a rolled back transaction takes its notes with it.
 */
const TABLES = {
  Lot: 'id',
  Accession: 'id',
  Packet: 'id',
  Placement: 'id',
  PacketCare: 'id',
  Movement: 'id',
  Store: 'id',
  StorePhase: 'id',
  ReadingImport: 'id',
  GerminationTest: 'id',
  MoistureTest: 'id',
  ViabilityTest: 'id',
  ImportJob: 'id',
  StockTake: 'id',
  StockTakeLine: 'id',
  SharingRequest: 'id',
  SharingLine: 'id',
  Tray: 'id',
  TrayCount: 'id',
  TrayNote: 'id',
  AuditEntry: 'id',
} as const;

/** Commands that leave several audit entries one after the other. */
const SEVERAL_ENTRIES = new Set([
  'record-germination-test',
  'record-moisture-test',
  'record-viability-test',
  'close-tray',
  'reopen-tray',
]);
/** Commands that close each of their records with an entry, and the whole with one about this. */
const CLOSED_BY: Record<string, string> = {
  'run-import': 'import',
  'send-request': 'sharing request',
  'close-stock-take': 'stock-take',
  'set-trays': 'trays',
  'set-next-group': 'tray',
};

/** Whether the last entry of a transaction is one that ends it. */
export function isClosed({ audit }: RecordedTransaction): boolean {
  const last = audit.at(-1);
  return last !== undefined && (CLOSED_BY[last.command] ?? last.entity) === last.entity;
}

export type RecordedTable = keyof typeof TABLES;

export interface RecordedRow {
  table: RecordedTable;
  key: string;
}

export interface RecordedTransaction {
  /** rows written, those of the audit left out */
  rows: RecordedRow[];
  audit: AuditRow[];
}

export interface AuditRow {
  id: number;
  command: string;
  entity: string;
  entityId: string;
  summary: string;
  before: string | null;
  after: string | null;
}

export function installRecorder(database: Database.Database): void {
  database.exec(
    `CREATE TABLE "Recorder" ("seq" INTEGER PRIMARY KEY AUTOINCREMENT, "table" TEXT NOT NULL, "key" TEXT NOT NULL)`,
  );
  for (const [table, key] of Object.entries(TABLES)) {
    database.exec(
      `CREATE TRIGGER "Recorder_${table}" AFTER INSERT ON "${table}"
       BEGIN INSERT INTO "Recorder" ("table", "key") VALUES ('${table}', NEW."${key}"); END`,
    );
  }
}

/**
 * Everything that was written, put together by the audit entries that close each transaction: rows, then the entries of
 * one command. A pair that is taken back counts as two, since each line has its entry.
 *
 * @returns transactions in order; rows that no audit entry closes come last, with an empty audit
 */
export function recordedTransactions(database: Database.Database): RecordedTransaction[] {
  const audit = new Map(
    database
      .prepare<[], AuditRow>(
        `SELECT "id", "command", "entity", "entityId", "summary", "before", "after" FROM "AuditEntry"`,
      )
      .all()
      .map((entry) => [String(entry.id), entry]),
  );
  const transactions: RecordedTransaction[] = [];
  let open: RecordedTransaction | null = null;
  const rows = database.prepare<[], RecordedRow>(`SELECT "table", "key" FROM "Recorder" ORDER BY "seq"`).all();
  for (const row of rows) {
    const entry: AuditRow | undefined = row.table === 'AuditEntry' ? audit.get(row.key) : undefined;
    if (open && open.audit.length > 0 && !goesOn(open, entry)) open = null;
    if (!open) {
      open = { rows: [], audit: [] };
      transactions.push(open);
    }
    if (entry) open.audit.push(entry);
    else open.rows.push(row);
  }
  return transactions;
}

function goesOn({ audit }: RecordedTransaction, entry: AuditRow | undefined): boolean {
  const last = audit.at(-1) as AuditRow;
  const closedBy = CLOSED_BY[last.command];
  if (closedBy) return last.entity !== closedBy;
  return entry?.command === last.command && SEVERAL_ENTRIES.has(entry.command);
}
