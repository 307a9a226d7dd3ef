import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import type { LedgerQuery } from '@/lib/schemas/ledger-query';
import { reader } from '../database/connections';
import { type LedgerLine, readLedgerLines } from './ledger-lines';
import { type ListPage, matching, PAGE_SIZE, pageOf, where } from './list-page';
import { namesOf } from './names-of';

export interface LedgerPage extends ListPage<LedgerLine> {
  /** seeds of all lines found, on whichever page; taken-back lines and their counter-entries among them */
  seedsIn: number;
  seedsOut: number;
}

/** Whose lines: the whole bank's, an accession's or a lot's. */
export type LedgerScope = { lotId?: string; accessionId?: string };

/** Lines found, newest day first: three statements and the names, however many there are. */
export async function findLedger(query: LedgerQuery, scope: LedgerScope = {}): Promise<LedgerPage> {
  const narrowed = where(ledgerConditions(query, scope));
  const [sums] = await reader().$queryRaw<{ total: bigint; seedsIn: bigint | null; seedsOut: bigint | null }[]>`
    SELECT COUNT(*) AS total, SUM(MAX(m."seeds", 0)) AS "seedsIn", SUM(MIN(m."seeds", 0)) AS "seedsOut"
    FROM "Movement" m ${narrowed}`;
  const total = Number(sums?.total ?? 0);
  const { page, pages, offset } = pageOf(query.page, total);
  const ids = await reader().$queryRaw<{ id: string }[]>`
    SELECT m."id" FROM "Movement" m ${narrowed}
    ORDER BY m."on" DESC, m."id" DESC LIMIT ${PAGE_SIZE} OFFSET ${offset}`;
  return {
    rows: await readLedgerLines(ids.map(({ id }) => id)),
    total,
    page,
    pages,
    seedsIn: Number(sums?.seedsIn ?? 0),
    seedsOut: -Number(sums?.seedsOut ?? 0) + 0,
  };
}

/** The store in which a movement's packet lay on its day; the first one for what was entered as earlier. */
export const STORE_ON_DAY = Prisma.raw(`COALESCE(
  (SELECT pl."storeId" FROM "Placement" pl WHERE pl."packetId" = m."packetId" AND pl."from" <= m."on"
   ORDER BY pl."from" DESC, pl."id" DESC LIMIT 1),
  (SELECT pl."storeId" FROM "Placement" pl WHERE pl."packetId" = m."packetId" ORDER BY pl."from", pl."id" LIMIT 1))`);

/**
 * A lot's judgement holds its numbers, names and crop in one row with an index, so filters find lots there and their
 * packets by them: joining every movement with its lot, accession and crop would take seconds in a large bank.
 */
export function ledgerConditions(query: LedgerQuery, { lotId, accessionId }: LedgerScope): Prisma.Sql[] {
  const all: Prisma.Sql[] = [];
  const packetsOf = (lots: Prisma.Sql) =>
    Prisma.sql`m."packetId" IN (SELECT p."id" FROM "Packet" p WHERE p."lotId" IN (${lots}))`;
  if (lotId) all.push(packetsOf(Prisma.sql`${lotId}`));
  if (accessionId) all.push(packetsOf(Prisma.sql`SELECT "id" FROM "Lot" WHERE "accessionId" = ${accessionId}`));
  if (query.reason) all.push(Prisma.sql`m."reason" = ${query.reason}`);
  if (query.from) all.push(Prisma.sql`m."on" >= ${query.from}`);
  if (query.to) all.push(Prisma.sql`m."on" <= ${query.to}`);
  if (query.person) all.push(Prisma.sql`m."byId" = ${query.person}`);
  if (query.crop) all.push(packetsOf(Prisma.sql`SELECT "lotId" FROM "LotJudgement" WHERE "cropId" = ${query.crop}`));
  if (query.store) all.push(inStore(query.store));
  if (query.q) all.push(named(query.q));
  return all;
}

function inStore(storeId: string): Prisma.Sql {
  const inside = Prisma.sql`
    WITH RECURSIVE inside(id) AS (
      SELECT ${storeId} UNION SELECT s."id" FROM "Store" s JOIN inside ON s."parentId" = inside.id
    ) SELECT id FROM inside`;
  // First the packets that ever lay there, found by an index; only of those is it asked where they lay on the day.
  return Prisma.sql`m."packetId" IN (SELECT "packetId" FROM "Placement" WHERE "storeId" IN (${inside}))
    AND ${STORE_ON_DAY} IN (${inside})`;
}

function named(typed: string): Prisma.Sql {
  const number = `%${typed.replace(/[\\%_]/g, '\\$&')}%`;
  const words = Prisma.join(matching('LotJudgement', typed), ' AND ');
  return Prisma.sql`m."packetId" IN (
    SELECT "id" FROM "Packet" WHERE "number" LIKE ${number} ESCAPE '\\'
    UNION
    SELECT "id" FROM "Packet" WHERE "lotId" IN (SELECT "lotId" FROM "LotJudgement" WHERE ${words}))`;
}

/** Everybody who has written a line, for the filter. */
export async function findLedgerWriters(): Promise<{ id: string; name: string }[]> {
  const rows = await reader().$queryRaw<{ byId: string }[]>`SELECT DISTINCT "byId" FROM "Movement"`;
  const names = await namesOf(rows.map(({ byId }) => byId));
  return rows
    .map(({ byId }) => ({ id: byId, name: names.get(byId) ?? byId }))
    .sort((a, b) => a.name.localeCompare(b.name, 'en'));
}
