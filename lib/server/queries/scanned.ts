import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { NextCount } from '@/lib/domain/germination/bench/count-days';
import { readCode } from '@/lib/domain/labels/read-code';
import { reader } from '../database/connections';
import { findStorePaths } from './store-paths';
import { findTraysUnderWay } from './trays-under-way';

/** What a label's code names, as somebody sees it who has just scanned it. */
export type Scanned = ScannedPacket | ScannedLot | ScannedTray;

interface Named {
  number: string;
  accessionName: string;
  cropName: string;
  /** seeds left; of a tray: seeds set */
  seeds: number;
  treatment: string | null;
}

export interface ScannedPacket extends Named {
  kind: 'packet';
  lotNumber: string;
  harvestedOn: string;
  place: string | null;
}

export interface ScannedLot extends Named {
  kind: 'lot';
  packets: { number: string; seeds: number; place: string | null }[];
}

export interface ScannedTray extends Named {
  kind: 'tray';
  /** the dish whose label it was; null: it named the whole tray */
  dish: number | null;
  dishes: number;
  lotNumber: string;
  place: string | null;
  status: 'open' | 'closed' | 'given-up';
  /** of an open tray: the count it waits for, null when it waits to be closed */
  next: NextCount | null;
}

const LOT = {
  number: true,
  harvestedOn: true,
  treatment: true,
  accession: { select: { name: true, crop: { select: { name: true } } } },
} satisfies Prisma.LotSelect;
const PACKET = {
  number: true,
  placements: { orderBy: [{ from: 'desc' }, { id: 'desc' }], take: 1, select: { storeId: true } },
  movements: { select: { seeds: true } },
} satisfies Prisma.PacketSelect;

/**
 * Looks up what was scanned or typed: the number of a packet, a lot or a test, or the address on a label.
 *
 * @returns null when it is none of them, or not in the collection
 * Checked in tests/server/queries/scanned.test.ts
 */
export async function findByCode(text: string): Promise<Scanned | null> {
  const code = readCode(text);
  if (code?.kind === 'packet') return findPacket(code.number);
  const tray = code?.kind === 'tray' ? await findTray(code.number, code.dish) : null;
  if (tray) return tray;
  // A lot may bear a number of the bank's own, which no code tells from other words, or from a test's.
  return findLot(code?.kind === 'lot' ? code.number : text.trim());
}

async function findPacket(number: string): Promise<ScannedPacket | null> {
  const packet = await reader().packet.findUnique({
    where: { number },
    select: { ...PACKET, lot: { select: LOT } },
  });
  if (!packet) return null;
  const paths = await findStorePaths();
  return {
    kind: 'packet',
    number,
    lotNumber: packet.lot.number,
    harvestedOn: packet.lot.harvestedOn,
    treatment: packet.lot.treatment,
    accessionName: packet.lot.accession.name,
    cropName: packet.lot.accession.crop.name,
    seeds: sumOf(packet.movements),
    place: placeOf(packet.placements, paths),
  };
}

async function findLot(number: string): Promise<ScannedLot | null> {
  const lot = await reader().lot.findUnique({
    where: { number },
    select: { ...LOT, packets: { orderBy: { number: 'asc' }, select: PACKET } },
  });
  if (!lot) return null;
  const paths = await findStorePaths();
  const packets = lot.packets.map((packet) => ({
    number: packet.number,
    seeds: sumOf(packet.movements),
    place: placeOf(packet.placements, paths),
  }));
  return {
    kind: 'lot',
    number,
    treatment: lot.treatment,
    accessionName: lot.accession.name,
    cropName: lot.accession.crop.name,
    seeds: sumOf(packets),
    packets: packets.filter(({ seeds }) => seeds > 0),
  };
}

async function findTray(number: string, dish: number | null): Promise<ScannedTray | null> {
  const tray = await reader().tray.findUnique({
    where: { number },
    select: { status: true, place: true, dishes: { select: { seeds: true } }, lot: { select: LOT } },
  });
  if (!tray) return null;
  const { lot, dishes } = tray;
  const open = findTraysUnderWay().find((one) => one.number === number);
  return {
    kind: 'tray',
    number,
    // A label of another bank may count dishes that this tray does not have.
    dish: dish !== null && dish <= dishes.length ? dish : null,
    dishes: dishes.length,
    lotNumber: lot.number,
    treatment: lot.treatment,
    accessionName: lot.accession.name,
    cropName: lot.accession.crop.name,
    seeds: sumOf(dishes),
    place: tray.place,
    status: tray.status as ScannedTray['status'],
    next: open && !open.toClose ? open.next : null,
  };
}

const sumOf = (lines: readonly { seeds: number }[]) => lines.reduce((sum, { seeds }) => sum + seeds, 0);

function placeOf(
  [placement]: readonly { storeId: string }[],
  paths: Awaited<ReturnType<typeof findStorePaths>>,
): string | null {
  const path = placement && paths.get(placement.storeId);
  return path ? path.steps.map((step) => step.name).join(' › ') : null;
}

/** Stock-takes that are under way: what is scanned can be added to one. */
export async function findOpenStockTakes(): Promise<{ number: string; storeName: string }[]> {
  const open = await reader().stockTake.findMany({
    where: { status: 'open' },
    orderBy: { startedOn: 'desc' },
    select: { number: true, store: { select: { name: true } } },
  });
  return open.map(({ number, store }) => ({ number, storeName: store.name }));
}
