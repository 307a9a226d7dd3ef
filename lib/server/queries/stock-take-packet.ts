import 'server-only';
import { readCode } from '@/lib/domain/labels/read-code';
import { reader } from '../database/connections';
import { packetsThere } from '../stores/stock-take-packets';
import { type SoughtPacket, soughtPackets } from './stock-take-work';

/** A packet in hand, with the line that it has already. */
export interface PacketInStockTake extends SoughtPacket {
  line: { version: number; finding: string; seeds: number | null; grams: number | null } | null;
}

export type FoundByCode = { ok: true; packet: PacketInStockTake } | { ok: false; sentence: string };

interface Candidate {
  id: string;
  number: string;
}

/**
 * The packet that a scanned or typed code names: its own number, or the number of a lot of which one packet is here.
 *
 * @param text  bare number, or an address that ends in one (lib/domain/labels/read-code.ts); also a lot number of the
 *              bank's own kind
 * @returns the packet, or one sentence for who holds it in the hand
 * Checked in tests/server/queries/stock-take-work.test.ts
 */
export async function findByCode(take: { id: string; storeId: string }, text: string): Promise<FoundByCode> {
  const code = readCode(text);
  // What reads like a test may be a lot number of the bank's own.
  const number = code && code.kind !== 'tray' ? code.number : text;
  const packet = code?.kind === 'lot' ? null : await packetOfNumber(number);
  if (packet) return getPacketInStockTake(take, packet.id);
  const lot = await lotOfNumber(number);
  if (!lot) return { ok: false, sentence: `There is no packet or lot ${number} in this bank.` };
  const there = new Set((await packetsThere(reader(), take.storeId)).map(({ packetId }) => packetId));
  const here = lot.packets.filter(({ id }) => there.has(id));
  const [only, another] = here.length > 0 ? here : lot.packets;
  if (!only) return { ok: false, sentence: `Lot ${lot.number} has no packet.` };
  if (another) {
    const numbers = (here.length > 0 ? here : lot.packets).map((one) => one.number).join(', ');
    return { ok: false, sentence: `Lot ${lot.number} has several packets: enter the number of this one (${numbers}).` };
  }
  return getPacketInStockTake(take, only.id);
}

export async function getPacketInStockTake(
  take: { id: string; storeId: string },
  packetId: string,
): Promise<FoundByCode> {
  const [packets, line] = await Promise.all([
    soughtPackets(take.storeId, [packetId]),
    reader().stockTakeLine.findUnique({
      where: { stockTakeId_packetId: { stockTakeId: take.id, packetId } },
      select: { version: true, finding: true, seeds: true, grams: true },
    }),
  ]);
  const packet = packets.get(packetId);
  return packet
    ? { ok: true, packet: { ...packet, line } }
    : { ok: false, sentence: 'This packet is not there any more.' };
}

async function packetOfNumber(number: string): Promise<Candidate | null> {
  const [packet] = await reader().$queryRaw<Candidate[]>`
    SELECT "id", "number" FROM "Packet" WHERE "number" = ${number} OR "number" = ${number.toUpperCase()} LIMIT 1`;
  return packet ?? null;
}

async function lotOfNumber(number: string) {
  const select = {
    number: true,
    packets: { orderBy: { number: 'asc' }, select: { id: true, number: true } },
  } as const;
  const exact = await reader().lot.findUnique({ where: { number }, select });
  return exact ?? reader().lot.findUnique({ where: { number: number.toUpperCase() }, select });
}
