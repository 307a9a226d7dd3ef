import 'server-only';
import type { Finding } from '@/lib/domain/stock/stock-take-difference';
import { reader } from '../database/connections';
import { packetsThere } from '../stores/stock-take-packets';
import { namesOf } from './names-of';

/** A packet as somebody looks for it on the shelf. */
export interface SoughtPacket {
  packetId: string;
  number: string;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  /** by its placement it lies in the store of the stock-take, or in one inside it */
  belongsHere: boolean;
  /** where by its placement: inside that store 'Shelf 2 › Box 1', '' for the store itself; elsewhere the whole path */
  placeName: string;
  /** what the ledger says now */
  seeds: number;
}

/** What was written down of one. */
export interface StockTakeLine extends SoughtPacket {
  lineId: string;
  version: number;
  finding: Finding;
  expectedSeeds: number;
  foundSeeds: number | null;
  foundSd: number | null;
  grams: number | null;
  decision: string | null;
  at: Date;
  byName: string | null;
}

export interface StockTakeWork {
  /** in the order of the places, then by name */
  toDo: SoughtPacket[];
  /** the latest first */
  lines: StockTakeLine[];
  /** of the packets that should be here: looked at, and all */
  done: number;
  total: number;
}

/** How far a stock-take is: six statements, however many packets there are. */
export async function getStockTakeWork(take: { id: string; storeId: string }): Promise<StockTakeWork> {
  const [there, stored] = await Promise.all([
    packetsThere(reader(), take.storeId),
    reader().stockTakeLine.findMany({ where: { stockTakeId: take.id }, orderBy: [{ at: 'desc' }, { id: 'desc' }] }),
  ]);
  const written = new Set(stored.map(({ packetId }) => packetId));
  const open = there.filter(({ packetId }) => !written.has(packetId)).map(({ packetId }) => packetId);
  const [packets, names] = await Promise.all([
    soughtPackets(take.storeId, [...open, ...written]),
    namesOf(stored.map(({ byId }) => byId)),
  ]);
  const lines = stored.flatMap(({ id, packetId, byId, seeds, seedsSd, finding, ...line }): StockTakeLine[] => {
    const packet = packets.get(packetId);
    if (!packet) return [];
    return [
      {
        ...line,
        ...packet,
        lineId: id,
        finding: finding as Finding,
        foundSeeds: seeds,
        foundSd: seedsSd,
        byName: names.get(byId) ?? null,
      },
    ];
  });
  const toDo = open.flatMap((packetId) => packets.get(packetId) ?? []).sort(inPlaceOrder);
  const done = lines.filter(({ belongsHere }) => belongsHere).length;
  return { toDo, lines, done, total: done + toDo.length };
}

function inPlaceOrder(a: SoughtPacket, b: SoughtPacket): number {
  const compare = (one: string, other: string) => one.localeCompare(other, 'en', { numeric: true });
  return (
    compare(a.placeName, b.placeName) ||
    compare(a.accessionName, b.accessionName) ||
    compare(a.lotNumber, b.lotNumber) ||
    compare(a.number, b.number)
  );
}

/** These packets by id, with where they belong as seen from a store: three statements. */
export async function soughtPackets(storeId: string, packetIds: string[]): Promise<Map<string, SoughtPacket>> {
  const [packets, sums, stores] = await Promise.all([
    reader().packet.findMany({
      where: { id: { in: packetIds } },
      select: {
        id: true,
        number: true,
        lot: { select: { number: true, accession: { select: { name: true, crop: { select: { name: true } } } } } },
        placements: { orderBy: [{ from: 'desc' }, { id: 'desc' }], take: 1, select: { storeId: true } },
      },
    }),
    reader().movement.groupBy({ by: ['packetId'], where: { packetId: { in: packetIds } }, _sum: { seeds: true } }),
    reader().store.findMany({ select: { id: true, name: true, parentId: true } }),
  ]);
  const seeds = new Map(sums.map((sum) => [sum.packetId, sum._sum.seeds ?? 0]));
  const byId = new Map(stores.map((store) => [store.id, store]));
  return new Map(
    packets.map(({ id, number, lot, placements }) => [
      id,
      {
        packetId: id,
        number,
        lotNumber: lot.number,
        accessionName: lot.accession.name,
        cropName: lot.accession.crop.name,
        seeds: seeds.get(id) ?? 0,
        ...placeSeenFrom(storeId, placements[0]?.storeId ?? null, byId),
      },
    ]),
  );
}

function placeSeenFrom(
  here: string,
  placedIn: string | null,
  stores: Map<string, { id: string; name: string; parentId: string | null }>,
): { belongsHere: boolean; placeName: string } {
  const path: string[] = [];
  const seen = new Set<string>();
  for (let id = placedIn; id !== null && !seen.has(id); id = stores.get(id)?.parentId ?? null) {
    if (id === here) return { belongsHere: true, placeName: path.join(' › ') };
    seen.add(id);
    path.unshift(stores.get(id)?.name ?? '');
  }
  return { belongsHere: false, placeName: path.join(' › ') };
}
