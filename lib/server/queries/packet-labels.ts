import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import type { LabelledPacket } from '@/lib/domain/labels/packet-label';
import { MOST_PACKETS } from '@/lib/domain/labels/packet-list';
import { readCode } from '@/lib/domain/labels/read-code';
import type { PacketRole } from '@/lib/domain/stock/packet-roles';
import { reader } from '../database/connections';
import { lastGerminations } from './last-germination';
import { type ListPage, matching, PAGE_SIZE, pageOf, where } from './list-page';
import { findStorePaths } from './store-paths';

export interface PacketsWanted {
  /** words of name, crop or lot, or a packet's number */
  q: string;
  /** a store: what lies in it and in the stores inside it */
  store: string;
  /** lot numbers */
  lots: readonly string[];
}

export interface PacketToLabel {
  packetNumber: string;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  place: string | null;
  seeds: number;
}

/** Where a packet lies: its latest placement. */
const STORE_NOW = Prisma.sql`(SELECT pl."storeId" FROM "Placement" pl WHERE pl."packetId" = p."id"
  ORDER BY pl."from" DESC, pl."id" DESC LIMIT 1)`;
const SEEDS = Prisma.sql`(SELECT COALESCE(SUM(m."seeds"), 0) FROM "Movement" m WHERE m."packetId" = p."id")`;

function conditions({ q, store, lots }: PacketsWanted): Prisma.Sql[] {
  const all = [Prisma.sql`${SEEDS} > 0`];
  const code = readCode(q);
  if (code?.kind === 'packet') all.push(Prisma.sql`p."number" = ${code.number}`);
  else if (code?.kind === 'lot') all.push(Prisma.sql`l."number" = ${code.number}`);
  else if (q) {
    const lotsFound = Prisma.sql`SELECT "lotId" FROM "LotJudgement" ${where(matching('LotJudgement', q))}`;
    all.push(Prisma.sql`p."lotId" IN (${lotsFound})`);
  }
  if (lots.length > 0) all.push(Prisma.sql`l."number" IN (${Prisma.join([...lots])})`);
  if (store) {
    const inside = Prisma.sql`WITH RECURSIVE inside(id) AS (
      SELECT ${store} UNION SELECT s."id" FROM "Store" s JOIN inside ON s."parentId" = inside.id
    ) SELECT id FROM inside`;
    all.push(Prisma.sql`p."id" IN (SELECT "packetId" FROM "Placement" WHERE "storeId" IN (${inside}))
      AND ${STORE_NOW} IN (${inside})`);
  }
  return all;
}

const FROM = Prisma.sql`FROM "Packet" p JOIN "Lot" l ON l."id" = p."lotId" JOIN "Accession" a ON a."id" = l."accessionId"
  JOIN "Crop" c ON c."id" = a."cropId"`;

/**
 * One page of the packets that hold seed and fit what is wanted. When nothing is said, the newest packets: those that
 * most likely want a label.
 *
 * Checked in tests/server/queries/packet-labels.test.ts
 */
export async function findPacketsToLabel(wanted: PacketsWanted, asked: number): Promise<ListPage<PacketToLabel>> {
  const anyPacket = !wanted.q && !wanted.store && wanted.lots.length === 0;
  const fitting = where(conditions(wanted));
  const total = anyPacket ? PAGE_SIZE : await countOf(fitting);
  const { page, pages, offset } = pageOf(asked, total);
  const order = anyPacket
    ? Prisma.sql`ORDER BY p."number" DESC`
    : Prisma.sql`ORDER BY a."name", l."number", p."number"`;
  const rows = await reader().$queryRaw<
    (Omit<PacketToLabel, 'place' | 'seeds'> & { storeId: string | null; seeds: bigint })[]
  >`
    SELECT p."number" AS "packetNumber", l."number" AS "lotNumber", a."name" AS "accessionName", c."name" AS "cropName",
      ${STORE_NOW} AS "storeId", ${SEEDS} AS "seeds"
    ${FROM} ${fitting} ${order} LIMIT ${PAGE_SIZE} OFFSET ${offset}`;
  const places = await storePaths();
  return {
    rows: rows.map(({ storeId, seeds, ...row }) => ({
      ...row,
      place: storeId === null ? null : (places.get(storeId) ?? null),
      seeds: Number(seeds),
    })),
    total: anyPacket ? rows.length : total,
    page,
    pages,
  };
}

async function countOf(fitting: Prisma.Sql): Promise<number> {
  const [counted] = await reader().$queryRaw<{ total: bigint }[]>`SELECT COUNT(*) AS total ${FROM} ${fitting}`;
  return Number(counted?.total ?? 0);
}

/** The numbers of all packets that fit, as many as one print run takes. */
export async function findPacketNumbersToLabel(wanted: PacketsWanted): Promise<string[]> {
  const rows = await reader().$queryRaw<{ number: string }[]>`
    SELECT p."number" ${FROM} ${where(conditions(wanted))} ORDER BY p."number" LIMIT ${MOST_PACKETS}`;
  return rows.map((row) => row.number);
}

/**
 * What stands on the labels of packets, in the order asked: four statements, however many there are. Numbers that are
 * not in the collection are left out.
 *
 * Checked in tests/server/queries/packet-labels.test.ts
 */
export async function findLabelledPackets(numbers: readonly string[]): Promise<LabelledPacket[]> {
  if (numbers.length === 0) return [];
  const rows = await reader().$queryRaw<
    {
      packetNumber: string;
      role: string;
      lotId: string;
      lotNumber: string;
      harvestedOn: string;
      treatment: string | null;
      accessionName: string;
      cropName: string;
      storeId: string | null;
    }[]
  >`
    SELECT p."number" AS "packetNumber", p."role", p."lotId", l."number" AS "lotNumber", l."harvestedOn", l."treatment",
      a."name" AS "accessionName", c."name" AS "cropName", ${STORE_NOW} AS "storeId"
    ${FROM} WHERE p."number" IN (SELECT value FROM json_each(${JSON.stringify(numbers)}))`;
  const [places, germinations] = await Promise.all([
    storePaths(),
    lastGerminations([...new Set(rows.map((row) => row.lotId))]),
  ]);
  const byNumber = new Map(rows.map((row) => [row.packetNumber, row]));
  return numbers.flatMap((number): LabelledPacket[] => {
    const row = byNumber.get(number);
    if (!row) return [];
    const { lotId, storeId, role, ...rest } = row;
    const tested = germinations.get(lotId);
    return [
      {
        ...rest,
        role: role as PacketRole,
        place: storeId === null ? null : (places.get(storeId) ?? null),
        germination: tested ? { germinated: tested.normal, sown: tested.seeds, testedOn: tested.finishedOn } : null,
      },
    ];
  });
}

/** Where each store lies, closed ones too: 'Freezer A › Shelf 2'. */
async function storePaths(): Promise<Map<string, string>> {
  const paths = await findStorePaths();
  return new Map([...paths].map(([id, { steps }]) => [id, steps.map((step) => step.name).join(' › ')]));
}
