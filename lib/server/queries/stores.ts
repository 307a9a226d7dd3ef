import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { reader } from '../database/connections';
import { type ListPage, PAGE_SIZE, pageOf } from './list-page';

/** What the last readings of a store say: over the seven days up to the last one. */
export interface LastReadings {
  lastAtEpochSeconds: number;
  coldestC: number;
  warmestC: number;
}

export interface StorePlace {
  id: string;
  name: string;
  kind: string;
  targetTemperatureC: number;
  targetRelativeHumidity: number | null;
  /** 0 for a store that lies in no other */
  depth: number;
  /** packets that lie here now and hold seed */
  packets: number;
  readings: LastReadings | null;
}

const WEEK_IN_SECONDS = 7 * 86_400;

/** Packets that hold seed, by the store of their latest placement. */
const NOW_IN_STORE = Prisma.raw(`
  SELECT now."storeId", now."packetId", now."container", now."moisturePercent", now."from" FROM (
    SELECT pl.*, ROW_NUMBER() OVER (PARTITION BY pl."packetId" ORDER BY pl."from" DESC, pl."id" DESC) AS latest
    FROM "Placement" pl
  ) now
  WHERE now.latest = 1
    AND (SELECT SUM(m."seeds") FROM "Movement" m WHERE m."packetId" = now."packetId") > 0`);

/** All stores in the order of their nesting: what lies inside a store follows it. Three statements in all. */
export async function findStores(): Promise<StorePlace[]> {
  const [stores, counts, readings] = await Promise.all([
    reader().store.findMany({
      orderBy: { name: 'asc' },
      select: {
        id: true,
        name: true,
        kind: true,
        parentId: true,
        targetTemperatureC: true,
        targetRelativeHumidity: true,
      },
    }),
    countPackets(),
    lastReadings(),
  ]);
  const inside = new Map<string | null, typeof stores>();
  for (const store of stores) inside.set(store.parentId, [...(inside.get(store.parentId) ?? []), store]);
  const placed: StorePlace[] = [];
  const place = (parentId: string | null, depth: number) => {
    for (const { parentId: _, ...store } of inside.get(parentId) ?? []) {
      placed.push({ ...store, depth, packets: counts.get(store.id) ?? 0, readings: readings.get(store.id) ?? null });
      place(store.id, depth + 1);
    }
  };
  place(null, 0);
  return placed;
}

async function countPackets(): Promise<Map<string, number>> {
  const rows = await reader().$queryRaw<{ storeId: string; packets: bigint }[]>`
    SELECT "storeId", COUNT(*) AS packets FROM (${NOW_IN_STORE}) GROUP BY "storeId"`;
  return new Map(rows.map((row) => [row.storeId, Number(row.packets)]));
}

async function lastReadings(): Promise<Map<string, LastReadings>> {
  const rows = await reader().$queryRaw<({ storeId: string } & Record<keyof LastReadings, number | bigint>)[]>`
    SELECT r."storeId", last."at" AS "lastAtEpochSeconds", MIN(r."temperatureC") AS "coldestC",
      MAX(r."temperatureC") AS "warmestC"
    FROM (
      SELECT s."id", (SELECT MAX("atEpochSeconds") FROM "Reading" WHERE "storeId" = s."id" AND NOT "takenBack") AS "at" FROM "Store" s
    ) last
    JOIN "Reading" r ON r."storeId" = last."id" AND r."atEpochSeconds" > last."at" - ${WEEK_IN_SECONDS}
      AND NOT r."takenBack"
    GROUP BY r."storeId"`;
  return new Map(
    rows.map((row) => [
      row.storeId,
      {
        lastAtEpochSeconds: Number(row.lastAtEpochSeconds),
        coldestC: Number(row.coldestC),
        warmestC: Number(row.warmestC),
      },
    ]),
  );
}

/** A store with what lies round and in it; null when there is no such store. */
export async function getStore(id: string) {
  return reader().store.findUnique({
    where: { id },
    select: {
      id: true,
      name: true,
      kind: true,
      parentId: true,
      targetTemperatureC: true,
      targetRelativeHumidity: true,
      notes: true,
      version: true,
      parent: { select: { id: true, name: true } },
      children: { orderBy: { name: 'asc' }, select: { id: true, name: true, kind: true } },
    },
  });
}

export async function getLastReadings(storeId: string): Promise<LastReadings | null> {
  return (await lastReadings()).get(storeId) ?? null;
}

export interface StoredPacket {
  packetNumber: string;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  container: string;
  moisturePercent: number | null;
  from: string;
  seeds: number;
}

/** One page of the packets that lie in a store now and hold seed. */
export async function findPacketsIn(storeId: string, asked: number): Promise<ListPage<StoredPacket>> {
  const total = (await countPackets()).get(storeId) ?? 0;
  const { page, pages, offset } = pageOf(asked, total);
  const rows = await reader().$queryRaw<(Omit<StoredPacket, 'seeds'> & { seeds: number | bigint })[]>`
    SELECT p."number" AS "packetNumber", l."number" AS "lotNumber", a."name" AS "accessionName", c."name" AS "cropName",
      here."container", here."moisturePercent", here."from",
      (SELECT SUM(m."seeds") FROM "Movement" m WHERE m."packetId" = p."id") AS "seeds"
    FROM (${NOW_IN_STORE}) here
    JOIN "Packet" p ON p."id" = here."packetId" JOIN "Lot" l ON l."id" = p."lotId"
    JOIN "Accession" a ON a."id" = l."accessionId" JOIN "Crop" c ON c."id" = a."cropId"
    WHERE here."storeId" = ${storeId}
    ORDER BY a."name", l."number", p."number" LIMIT ${PAGE_SIZE} OFFSET ${offset}`;
  return { rows: rows.map((row) => ({ ...row, seeds: Number(row.seeds) })), total, page, pages };
}

/** Every store, to choose from in a form, with where it lies: 'Freezer A › Shelf 2'. */
export async function findStoreChoices(): Promise<{ id: string; name: string; targetTemperatureC: number }[]> {
  const stores = await reader().store.findMany({
    orderBy: { name: 'asc' },
    select: { id: true, name: true, targetTemperatureC: true, parentId: true },
  });
  const byId = new Map(stores.map((store) => [store.id, store]));
  const pathOf = (id: string, depth = 0): string => {
    const store = byId.get(id);
    if (!store) return '';
    return store.parentId && depth < 20 ? `${pathOf(store.parentId, depth + 1)} › ${store.name}` : store.name;
  };
  return stores
    .map(({ id, targetTemperatureC }) => ({ id, name: pathOf(id), targetTemperatureC }))
    .sort((a, b) => a.name.localeCompare(b.name, 'en'));
}
