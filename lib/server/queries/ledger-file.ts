import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { type CsvCell, csvLine } from '@/lib/domain/spreadsheet/csv-line';
import { reasonInWords } from '@/lib/domain/stock/movement-reasons';
import type { LedgerQuery } from '@/lib/schemas/ledger-query';
import { connections } from '../database/connections';
import { type LedgerScope, ledgerConditions, STORE_ON_DAY } from './ledger';
import { where } from './list-page';
import { namesOf } from './names-of';

/** Lines read at once: the file grows piece by piece, and other questions come in between. */
const LINES_AT_ONCE = 2_000;

const COLUMNS = [
  'day',
  'reason',
  'seeds',
  'grams',
  'standard deviation of seeds',
  'packet',
  'lot',
  'accession',
  'accession name',
  'crop',
  'store on that day',
  'takes back the line of',
  'taken back on',
  'belongs to',
  'note',
  'person',
  'recorded at (UTC)',
] as const;

interface FileRow {
  id: string;
  on: string;
  reason: string;
  seeds: number;
  grams: number | null;
  seedsSd: number | null;
  packet: string;
  lot: string;
  accession: string;
  accessionName: string;
  crop: string;
  store: string | null;
  correctsOn: string | null;
  takenBackOn: string | null;
  belongsTo: string | null;
  note: string | null;
  byId: string;
  recordedAt: string;
}

/** The first bytes tell spreadsheets that the text is UTF-8. */
const UTF8_MARK = '\ufeff';

/**
 * The lines found as a CSV file, newest day first, piece by piece.
 *
 * Checked in tests/server/queries/ledger.test.ts
 */
export async function* ledgerFile(query: LedgerQuery, scope: LedgerScope = {}): AsyncGenerator<string> {
  yield UTF8_MARK + csvLine(COLUMNS);
  const narrowed = ledgerConditions(query, scope);
  const names = new Map<string, string>();
  let last: FileRow | undefined;
  do {
    const rows = readPiece(narrowed, last);
    const unknown = [...new Set(rows.map(({ byId }) => byId))].filter((id) => !names.has(id));
    for (const [id, name] of await namesOf(unknown)) names.set(id, name);
    yield rows.map((row) => csvLine(cellsOf(row, names))).join('');
    last = rows.length === LINES_AT_ONCE ? rows.at(-1) : undefined;
  } while (last);
}

function readPiece(narrowed: Prisma.Sql[], after: FileRow | undefined): FileRow[] {
  const further = after ? [...narrowed, Prisma.sql`(m."on", m."id") < (${after.on}, ${after.id})`] : narrowed;
  const { sql, values } = Prisma.sql`
    SELECT m."id", m."on", m."reason", m."seeds", m."grams", m."seedsSd", m."note", m."byId", m."recordedAt",
      p."number" AS packet, l."number" AS lot, a."number" AS accession, a."name" AS "accessionName", c."name" AS crop,
      (SELECT s."name" FROM "Store" s WHERE s."id" = ${STORE_ON_DAY}) AS store,
      (SELECT o."on" FROM "Movement" o WHERE o."id" = m."correctsId") AS "correctsOn",
      (SELECT o."on" FROM "Movement" o WHERE o."correctsId" = m."id") AS "takenBackOn",
      COALESCE(
        (SELECT t."number" FROM "GerminationTest" t WHERE t."withdrawalId" = m."id"),
        (SELECT t."number" FROM "Tray" t WHERE t."withdrawalId" = m."id"),
        (SELECT t."number" FROM "MoistureTest" t WHERE t."withdrawalId" = m."id"),
        (SELECT t."number" FROM "ViabilityTest" t WHERE t."withdrawalId" = m."id"),
        (SELECT t."number" FROM "StockTake" t WHERE t."id" = m."stockTakeId"),
        (SELECT r."number" FROM "SharingRequest" r WHERE r."id" = m."requestId")
      ) AS "belongsTo"
    FROM "Movement" m JOIN "Packet" p ON p."id" = m."packetId" JOIN "Lot" l ON l."id" = p."lotId"
    JOIN "Accession" a ON a."id" = l."accessionId" JOIN "Crop" c ON c."id" = a."cropId"
    ${where(further)} ORDER BY m."on" DESC, m."id" DESC LIMIT ${LINES_AT_ONCE}`;
  return connections()
    .rows.prepare<unknown[], FileRow>(sql)
    .all(...values);
}

function cellsOf(row: FileRow, names: Map<string, string>): CsvCell[] {
  return [
    row.on,
    reasonInWords(row.reason, row.seeds),
    row.seeds,
    row.grams,
    row.seedsSd,
    row.packet,
    row.lot,
    row.accession,
    row.accessionName,
    row.crop,
    row.store,
    row.correctsOn,
    row.takenBackOn,
    row.belongsTo,
    row.note,
    names.get(row.byId) ?? null,
    row.recordedAt,
  ];
}
