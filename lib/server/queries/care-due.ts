import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { CONTAINERS } from '@/lib/domain/stock/containers';
import { reader } from '../database/connections';
import { today } from '../today';
import { type ListPage, PAGE_SIZE, pageOf } from './list-page';

/** A packet whose container wants something today: it stands open, or its desiccant is due. */
export interface CareDueRow {
  packetNumber: string;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  storeName: string;
  what: 'seal' | 'desiccant';
  /** open since, or due on */
  on: string;
}

const ROWS_SHOWN = 8;
const HERMETIC = Prisma.join(CONTAINERS.filter(({ hermetic }) => hermetic).map(({ key }) => key));

/** Of every packet that holds seed, what packetCareNow and nextCareDue say of it; longest waiting first. */
const dueFrom = (day: string) => Prisma.sql`
  WITH "seal" AS (
    SELECT c."packetId", c."what", c."on",
      ROW_NUMBER() OVER (PARTITION BY c."packetId" ORDER BY c."on" DESC, c."id" DESC) AS "latest"
    FROM "PacketCare" c WHERE c."what" <> 'desiccant'
  ), "desiccant" AS (
    SELECT c."packetId", c."desiccant", c."changeDueOn",
      ROW_NUMBER() OVER (PARTITION BY c."packetId" ORDER BY c."on" DESC, c."id" DESC) AS "latest"
    FROM "PacketCare" c WHERE c."what" = 'desiccant'
  ), "due" AS (
    SELECT "packetId", 'seal' AS "what", "on" FROM "seal" WHERE "latest" = 1 AND "what" = 'opened'
    UNION ALL
    SELECT "packetId", 'desiccant', "changeDueOn" FROM "desiccant"
    WHERE "latest" = 1 AND "desiccant" IS NOT NULL AND "changeDueOn" <= ${day}
  )
  SELECT p."number" AS "packetNumber", l."number" AS "lotNumber", a."name" AS "accessionName", cr."name" AS "cropName",
    s."name" AS "storeName", d."what", d."on", COUNT(*) OVER () AS "total"
  FROM "due" d
  JOIN "Packet" p ON p."id" = d."packetId"
  JOIN "Placement" pl ON pl."id" = (
    SELECT "id" FROM "Placement" WHERE "packetId" = p."id" ORDER BY "from" DESC, "id" DESC LIMIT 1
  )
  JOIN "Store" s ON s."id" = pl."storeId"
  JOIN "Lot" l ON l."id" = p."lotId"
  JOIN "Accession" a ON a."id" = l."accessionId"
  JOIN "Crop" cr ON cr."id" = a."cropId"
  WHERE (d."what" = 'desiccant' OR pl."container" IN (${HERMETIC}))
    AND (SELECT SUM(m."seeds") FROM "Movement" m WHERE m."packetId" = p."id") > 0
  ORDER BY d."on", p."number", d."what"`;

/**
 * The first few for Today, with how many there are, in one statement.
 *
 * Checked against packetCareNow in tests/server/queries/care-due.test.ts
 */
export async function findCareDue(limit = ROWS_SHOWN): Promise<{ rows: CareDueRow[]; total: number }> {
  const rows = await reader().$queryRaw<(CareDueRow & { total: bigint })[]>`${dueFrom(today())} LIMIT ${limit}`;
  return { rows: rows.map(({ total: _, ...row }) => row), total: Number(rows[0]?.total ?? 0) };
}

/** One page of the whole list. */
export async function findCareDuePage(asked: number): Promise<ListPage<CareDueRow>> {
  const { total } = await findCareDue(1);
  const { page, pages, offset } = pageOf(asked, total);
  const rows = await reader().$queryRaw<(CareDueRow & { total: bigint })[]>`
    ${dueFrom(today())} LIMIT ${PAGE_SIZE} OFFSET ${offset}`;
  return { rows: rows.map(({ total: _, ...row }) => row), total, page, pages };
}
