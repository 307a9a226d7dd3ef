import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { reader } from '../database/connections';
import { packetsInside } from '../stores/packets-in-store';
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
  inheritsTarget: boolean;
  closedOn: string | null;
  capacityPackets: number | null;
  /** packets with seed that lie now in it or in what stands in it */
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
        inheritsTarget: true,
        closedOn: true,
        capacityPackets: true,
      },
    }),
    countPackets(),
    lastReadings(),
  ]);
  const inside = new Map<string | null, typeof stores>();
  for (const store of stores) inside.set(store.parentId, [...(inside.get(store.parentId) ?? []), store]);
  const placed: StorePlace[] = [];
  const place = (parentId: string | null, depth: number): number => {
    let packets = 0;
    for (const { parentId: _, ...store } of inside.get(parentId) ?? []) {
      const line = { ...store, depth, packets: counts.get(store.id) ?? 0, readings: readings.get(store.id) ?? null };
      placed.push(line);
      line.packets += place(store.id, depth + 1);
      packets += line.packets;
    }
    return packets;
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
  const store = await reader().store.findUnique({
    where: { id },
    select: {
      id: true,
      name: true,
      kind: true,
      parentId: true,
      targetTemperatureC: true,
      targetRelativeHumidity: true,
      inheritsTarget: true,
      capacityPackets: true,
      closedOn: true,
      notes: true,
      version: true,
      parent: { select: { id: true, name: true } },
      phases: {
        orderBy: { id: 'asc' },
        select: {
          from: true,
          targetTemperatureC: true,
          targetRelativeHumidity: true,
          parent: { select: { id: true, name: true } },
        },
      },
    },
  });
  if (!store) return null;
  const [around, { packets }] = await Promise.all([findStoresAround(id), packetsInside(reader(), id)]);
  return { ...store, around, packetsInside: packets };
}

export type StoreDetail = NonNullable<Awaited<ReturnType<typeof getStore>>>;

/** The stores that a store stands in, the outermost first. */
async function findStoresAround(id: string): Promise<{ id: string; name: string }[]> {
  return reader().$queryRaw<{ id: string; name: string }[]>`
    WITH RECURSIVE around(id, name, "parentId", depth) AS (
      SELECT "id", "name", "parentId", 0 FROM "Store" WHERE "id" = ${id}
      UNION ALL
      SELECT s."id", s."name", s."parentId", around.depth + 1 FROM "Store" s JOIN around ON s."id" = around."parentId"
      WHERE around.depth < 20
    )
    SELECT id, name FROM around WHERE depth > 0 ORDER BY depth DESC`;
}

/** What stands in a store, with how much lies in each. */
export async function findStoresIn(id: string): Promise<StorePlace[]> {
  const all = await findStores();
  const at = all.findIndex((store) => store.id === id);
  const depth = all[at]?.depth ?? 0;
  const rest = all.slice(at + 1);
  const end = rest.findIndex((store) => store.depth <= depth);
  return (end < 0 ? rest : rest.slice(0, end)).map((store) => ({ ...store, depth: store.depth - depth - 1 }));
}

export async function getLastReadings(storeId: string): Promise<LastReadings | null> {
  return (await lastReadings()).get(storeId) ?? null;
}

export interface StoredPacket {
  packetNumber: string;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  storeId: string;
  storeName: string;
  container: string;
  moisturePercent: number | null;
  from: string;
  seeds: number;
}

/** One page of the packets with seed that lie now in a store or in what stands in it. */
export async function findPacketsIn(storeId: string, total: number, asked: number): Promise<ListPage<StoredPacket>> {
  const { page, pages, offset } = pageOf(asked, total);
  const rows = await reader().$queryRaw<(Omit<StoredPacket, 'seeds'> & { seeds: number | bigint })[]>`
    WITH RECURSIVE inside(id) AS (
      SELECT ${storeId} UNION SELECT s."id" FROM "Store" s JOIN inside ON s."parentId" = inside.id
    )
    SELECT p."number" AS "packetNumber", l."number" AS "lotNumber", a."name" AS "accessionName", c."name" AS "cropName",
      here."storeId", st."name" AS "storeName", here."container", here."moisturePercent", here."from",
      (SELECT SUM(m."seeds") FROM "Movement" m WHERE m."packetId" = p."id") AS "seeds"
    FROM (${NOW_IN_STORE}) here
    JOIN "Packet" p ON p."id" = here."packetId" JOIN "Lot" l ON l."id" = p."lotId"
    JOIN "Accession" a ON a."id" = l."accessionId" JOIN "Crop" c ON c."id" = a."cropId"
    JOIN "Store" st ON st."id" = here."storeId"
    WHERE here."storeId" IN (SELECT id FROM inside)
    ORDER BY a."name", l."number", p."number" LIMIT ${PAGE_SIZE} OFFSET ${offset}`;
  return { rows: rows.map((row) => ({ ...row, seeds: Number(row.seeds) })), total, page, pages };
}

export interface StoreChoice {
  id: string;
  name: string;
  targetTemperatureC: number;
}

/** Every store in use, to choose from in a form, with where it lies: 'Freezer A › Shelf 2'. */
export async function findStoreChoices(): Promise<StoreChoice[]> {
  return choicesOf(await storesToChoose(), () => true);
}

/** The stores that a store may be moved into: not itself, nor what stands in it. */
export async function findPlacesFor(id: string): Promise<StoreChoice[]> {
  const stores = await storesToChoose();
  const byId = new Map(stores.map((store) => [store.id, store]));
  const standsIn = (store: ChoiceRow | undefined, depth = 0): boolean =>
    store !== undefined &&
    depth < DEEPEST &&
    (store.id === id || (store.parentId !== null && standsIn(byId.get(store.parentId), depth + 1)));
  return choicesOf(stores, (store) => !standsIn(store));
}

interface ChoiceRow extends StoreChoice {
  parentId: string | null;
  closedOn: string | null;
}

/** Deeper than any freezer, shelf and box; ends the walk should nesting ever be broken. */
const DEEPEST = 20;

function storesToChoose(): Promise<ChoiceRow[]> {
  return reader().store.findMany({
    select: { id: true, name: true, targetTemperatureC: true, parentId: true, closedOn: true },
  });
}

function choicesOf(stores: ChoiceRow[], mayBeChosen: (store: ChoiceRow) => boolean): StoreChoice[] {
  const byId = new Map(stores.map((store) => [store.id, store]));
  const pathOf = (store: ChoiceRow, depth = 0): string => {
    const around = store.parentId === null || depth > DEEPEST ? undefined : byId.get(store.parentId);
    return around ? `${pathOf(around, depth + 1)} › ${store.name}` : store.name;
  };
  return stores
    .filter((store) => store.closedOn === null && mayBeChosen(store))
    .map((store) => ({ id: store.id, name: pathOf(store), targetTemperatureC: store.targetTemperatureC }))
    .sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
}
