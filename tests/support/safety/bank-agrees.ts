import type Database from 'better-sqlite3';
import { isClosed, type RecordedTable, type RecordedTransaction, recordedTransactions } from './recorder';
import { trayComplaints } from './tray-laws';

/**
 * Whether what a bank holds agrees with itself: ledger, placements, audit, imports. Reads a bank with a recorder.
 *
 * @returns complaints in plain words; none when everything agrees
 */
export function complaintsAbout(database: Database.Database): string[] {
  const transactions = recordedTransactions(database);
  return [
    ...fileComplaints(database),
    ...LAWS.flatMap(({ law, sql }) => rowsOf(database, sql).map((row) => `${law}: ${JSON.stringify(row)}`)),
    ...shapeComplaints(transactions),
    ...ledgerComplaints(database, transactions),
    ...trayComplaints(database),
  ];
}

const rowsOf = (database: Database.Database, sql: string) => database.prepare<[], object>(sql).all();

function fileComplaints(database: Database.Database): string[] {
  const sound = database.pragma('integrity_check', { simple: true });
  const dangling = database.pragma('foreign_key_check') as unknown[];
  return [
    ...(sound === 'ok' ? [] : [`the file is not sound: ${sound}`]),
    ...dangling.map((row) => `a link leads nowhere: ${JSON.stringify(row)}`),
  ];
}

/** Each query finds what breaks its law. */
const LAWS = [
  {
    law: 'a packet holds less than nothing',
    sql: `SELECT "packetId", SUM("seeds") AS "seeds" FROM "Movement" GROUP BY 1 HAVING SUM("seeds") < 0`,
  },
  {
    law: 'a packet lies nowhere',
    sql: `SELECT "number" FROM "Packet" p WHERE NOT EXISTS (SELECT 1 FROM "Placement" WHERE "packetId" = p."id")`,
  },
  {
    law: 'a packet was never filled',
    sql: `SELECT "number" FROM "Packet" p WHERE NOT EXISTS (SELECT 1 FROM "Movement" WHERE "packetId" = p."id")`,
  },
  {
    law: 'a lot has no packet',
    sql: `SELECT "number" FROM "Lot" l WHERE NOT EXISTS (SELECT 1 FROM "Packet" WHERE "lotId" = l."id")`,
  },
  {
    law: 'a counter-entry does not take back what it names',
    sql: `SELECT c."id" FROM "Movement" c JOIN "Movement" m ON m."id" = c."correctsId"
          WHERE c."packetId" <> m."packetId" OR c."seeds" <> -m."seeds"`,
  },
  {
    law: 'half a split or merge',
    sql: `SELECT "pairId", COUNT(*) AS "lines", SUM("seeds") AS "seeds" FROM "Movement" WHERE "pairId" IS NOT NULL
          GROUP BY 1 HAVING COUNT(*) % 2 = 1 OR SUM("seeds") <> 0`,
  },
  {
    law: 'half a pair was taken back',
    sql: `SELECT m."pairId" FROM "Movement" m LEFT JOIN "Movement" c ON c."correctsId" = m."id" WHERE m."pairId" IS NOT NULL
          GROUP BY 1 HAVING COUNT(c."id") NOT IN (0, COUNT(*))`,
  },
  {
    law: 'a test has no dishes',
    sql: `SELECT "number" FROM "GerminationTest" t WHERE NOT EXISTS (SELECT 1 FROM "Replicate" WHERE "testId" = t."id")`,
  },
  {
    law: 'an import that is not done has left records, or one that is done lacks some',
    sql: `SELECT j."id", j."status", j."rows", COUNT(a."id") AS "records" FROM "ImportJob" j
          LEFT JOIN "AuditEntry" a ON a."command" = 'run-import' AND a."entity" IN ('accession', 'lot', 'germination test')
            AND json_extract(a."after", '$.importId') = j."id"
          GROUP BY j."id" HAVING COUNT(a."id") <> CASE j."status" WHEN 'imported' THEN j."rows" ELSE 0 END`,
  },
  {
    law: 'an import of readings that is not done has left some, or one that is done lacks some',
    sql: `SELECT i."id", i."status", i."added", COUNT(r."atEpochSeconds") AS "readings" FROM "ReadingImport" i
          LEFT JOIN "Reading" r ON r."importId" = i."id" AND r."takenBack" = (i."status" = 'taken-back')
          GROUP BY i."id" HAVING COUNT(r."atEpochSeconds") <> CASE i."status" WHEN 'uploaded' THEN 0 ELSE i."added" END`,
  },
  {
    law: 'a day of readings does not add up',
    sql: `WITH days AS (
            SELECT "storeId", CAST(floor("atEpochSeconds" / 86400.0) AS INTEGER) AS "epochDay", COUNT(*) AS "readings",
              AVG("temperatureC") AS "mean", MIN("temperatureC") AS "lowest" FROM "Reading" WHERE NOT "takenBack" GROUP BY 1, 2)
          SELECT COALESCE(d."storeId", k."storeId") AS "storeId", COALESCE(d."epochDay", k."epochDay") AS "epochDay"
          FROM days d FULL JOIN "ReadingDay" k ON k."storeId" = d."storeId" AND k."epochDay" = d."epochDay"
          WHERE d."readings" IS NOT k."readings" OR d."lowest" IS NOT k."lowestTemperatureC"
            OR abs(d."mean" - k."meanTemperatureC") > 1e-6`,
  },
  {
    law: 'a number was given out that its series does not know of',
    sql: `SELECT p."number" FROM "Packet" p WHERE p."number" GLOB 'P-[0-9]*'
          AND CAST(substr(p."number", 3) AS INTEGER) > (SELECT "last" FROM "NumberSeries" WHERE "series" = 'P')`,
  },
  {
    law: 'a request is sent but its seed did not go out, or the other way round',
    sql: `SELECT r."number", r."status", l."position" FROM "SharingRequest" r JOIN "SharingLine" l ON l."requestId" = r."id"
          LEFT JOIN "Movement" m ON m."id" = l."movementId" AND m."requestId" = r."id" AND m."seeds" = -l."seeds"
          WHERE (r."status" = 'sent') <> (m."id" IS NOT NULL)`,
  },
  {
    law: 'a count replaces one of another dish or day',
    sql: `SELECT c."id" FROM "TrayCount" c JOIN json_each(c."replaces") r JOIN "TrayCount" b ON b."id" = r."value"
          WHERE b."dishId" <> c."dishId" OR b."on" <> c."on"`,
  },
  {
    law: 'a tray has no dishes, or its seed did not go out of its packet as it was laid out',
    sql: `SELECT t."number", SUM(d."seeds") AS "laidOut", -m."seeds" AS "takenOut" FROM "Tray" t
          LEFT JOIN "TrayDish" d ON d."trayId" = t."id" LEFT JOIN "Movement" m ON m."id" = t."withdrawalId"
          GROUP BY t."id" HAVING SUM(d."seeds") IS NULL
            OR m."id" IS NOT NULL AND (SUM(d."seeds") <> -m."seeds" OR m."packetId" IS NOT t."packetId")`,
  },
  {
    law: 'seed was put back of a tray that was not given up',
    sql: `SELECT t."number" FROM "Tray" t JOIN "Movement" c ON c."correctsId" = t."withdrawalId" WHERE t."status" <> 'given-up'`,
  },
  {
    law: 'more seed was examined than its tray holds, or seed of a tray went out a second time',
    sql: `SELECT t."number" FROM "Tray" t JOIN "ViabilityTest" v ON v."trayId" = t."id"
          GROUP BY t."id" HAVING COUNT(v."withdrawalId") > 0 OR
            SUM(COALESCE(v."stainedNormally", 0) + COALESCE(v."unstained", 0) + COALESCE(v."firm", 0) + COALESCE(v."empty", 0))
              > (SELECT SUM("seeds") FROM "TrayDish" WHERE "trayId" = t."id")`,
  },
  {
    law: 'a stock-take that is not closed has moved seed',
    sql: `SELECT t."number" FROM "StockTake" t WHERE t."status" <> 'closed'
          AND EXISTS (SELECT 1 FROM "Movement" m WHERE m."stockTakeId" = t."id")`,
  },
];

type Shape = Partial<Record<RecordedTable, [least: number, most: number]>>;
const MANY = Number.POSITIVE_INFINITY;

/** Rows that one run of a command writes: any other number means that part of a transaction is missing. */
const SHAPES: Record<string, Shape> = {
  'log-cleaned-lot': { Lot: [1, 1], Packet: [1, 1], Placement: [1, 1], Movement: [1, 1] },
  'take-seed-out': { Movement: [1, 1] },
  'move-packet': { Placement: [1, 1] },
  'repack-packet': { Placement: [1, 1], PacketCare: [0, 2] },
  'split-packet': { Packet: [1, 1], Placement: [2, MANY], Movement: [2, 2], PacketCare: [0, 2] },
  'merge-packets': { Movement: [2, 2] },
  'undo-movement': { Movement: [1, 1] },
  'record-germination-test': { GerminationTest: [1, 1], Movement: [0, 1] },
  'record-moisture-test': { MoistureTest: [1, 1], Movement: [0, 1] },
  'record-packet-care': { PacketCare: [1, 1] },
  'change-packet-role': {},
  'move-store': { StorePhase: [1, MANY] },
  'update-store': { StorePhase: [0, MANY] },
  'upload-readings': { ReadingImport: [1, 1] },
  'import-readings': {},
  'take-back-readings': {},
  'start-stock-take': { StockTake: [1, 1] },
  'record-stock-take-line': { StockTakeLine: [0, 1] },
  'close-stock-take': { Movement: [0, MANY], Placement: [0, MANY] },
  'add-bench-entries': { TrayCount: [1, 2] },
  'add-bench-photo': { TrayNote: [1, 1] },
  'set-trays': { Tray: [1, MANY], Movement: [1, MANY] },
  'set-next-group': { Tray: [1, 1], Movement: [1, 1] },
  'give-up-tray': {},
  'write-tray-counts': { TrayCount: [1, MANY] },
  'settle-count': { TrayCount: [1, 1] },
  'close-tray': { GerminationTest: [0, 1] },
  'reopen-tray': {},
  'record-viability-test': { ViabilityTest: [1, 1], Movement: [0, 1] },
  'create-request': { SharingRequest: [1, 1] },
  'add-request-line': { SharingLine: [1, 1] },
  'send-request': { Movement: [1, MANY] },
};

/** Commands that any sequence is made of. */
export const COMMANDS_IN_SHAPE = Object.keys(SHAPES);

function shapeComplaints(transactions: RecordedTransaction[]): string[] {
  return transactions.flatMap(({ rows, audit }) => {
    const last = audit.at(-1);
    if (!last || !isClosed({ rows, audit })) {
      return [
        `${last?.command ?? 'nobody'} left rows that no audit entry closes: ${rows.map((row) => row.table).join(', ')}`,
      ];
    }
    const shape = SHAPES[last.command];
    if (!shape) return [];
    const counts = new Map<RecordedTable, number>(Object.keys(shape).map((table) => [table as RecordedTable, 0]));
    for (const { table } of rows) counts.set(table, (counts.get(table) ?? 0) + 1);
    return [...counts].flatMap(([table, count]) => {
      const [least, most] = shape[table] ?? [0, 0];
      return count >= least && count <= most
        ? []
        : [`${last.command} wrote ${count} rows of ${table}: ${last.summary}`];
    });
  });
}

/** Commands whose entry about a packet says how many seeds are in it afterwards. */
const SAYS_WHAT_IS_LEFT = new Set(['take-seed-out', 'undo-movement', 'split-packet', 'send-request']);

interface MovementRow {
  id: string;
  packetId: string;
  lotId: string;
  reason: string;
  seeds: number;
}

/** Goes through the ledger as it was written: never below nothing, splits conserve, the audit's figures hold. */
function ledgerComplaints(database: Database.Database, transactions: RecordedTransaction[]): string[] {
  const movements = new Map(
    database
      .prepare<[], MovementRow>(
        `SELECT m."id", m."packetId", p."lotId", m."reason", m."seeds" FROM "Movement" m JOIN "Packet" p ON p."id" = m."packetId"`,
      )
      .all()
      .map((movement) => [movement.id, movement]),
  );
  const held = new Map<string, number>();
  const complaints: string[] = [];
  for (const { rows, audit } of transactions) {
    const moved = rows.filter(({ table }) => table === 'Movement').map(({ key }) => movements.get(key) as MovementRow);
    const within = new Map<string, number>();
    for (const { packetId, lotId, reason, seeds } of moved) {
      held.set(packetId, (held.get(packetId) ?? 0) + seeds);
      if ((held.get(packetId) as number) < 0) complaints.push(`packet ${packetId} was overdrawn for a while`);
      if (reason === 'split' || reason === 'merge') within.set(lotId, (within.get(lotId) ?? 0) + seeds);
    }
    for (const [lotId, sum] of within) {
      if (sum !== 0) complaints.push(`a split or merge changed lot ${lotId} by ${sum} seeds`);
    }
    for (const { command, entity, entityId, after, summary } of audit) {
      if (entity !== 'packet' || !SAYS_WHAT_IS_LEFT.has(command)) continue;
      const said = (JSON.parse(after ?? '{}') as { seeds?: number }).seeds;
      if (said !== held.get(entityId)) {
        complaints.push(`the audit says ${said} seeds, the ledger ${held.get(entityId)}: ${summary}`);
      }
    }
  }
  return complaints;
}
