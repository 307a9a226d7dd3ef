import 'server-only';
import { reader } from '../database/connections';
import { namesOf } from './names-of';

export interface PacketRow {
  id: string;
  number: string;
  role: string;
  seeds: number;
  /** where it lies: the latest placement */
  placement: PlacementRow | null;
  placements: PlacementRow[];
  movements: MovementRow[];
}

export interface PlacementRow {
  id: string;
  storeId: string;
  storeName: string;
  targetTemperatureC: number;
  from: string;
  container: string;
  moisturePercent: number | null;
}

export interface MovementRow {
  id: string;
  on: string;
  reason: string;
  seeds: number;
  grams: number | null;
  note: string | null;
  /** what the packet held after this line */
  balance: number;
  /** taken back by a later line */
  takenBack: boolean;
  /** the line that this one takes back */
  corrects: { on: string; reason: string } | null;
  byName: string | null;
}

/** A lot's packets with places and whole ledgers, oldest line first; null when there is no such lot. */
export async function getLotPackets(lotId: string) {
  const lot = await reader().lot.findUnique({
    where: { id: lotId },
    select: {
      number: true,
      treatment: true,
      thousandSeedWeightG: true,
      accession: { select: { number: true, name: true, crop: { select: { name: true } } } },
      packets: {
        orderBy: { number: 'asc' },
        select: {
          id: true,
          number: true,
          role: true,
          placements: {
            orderBy: [{ from: 'asc' }, { id: 'asc' }],
            select: {
              id: true,
              storeId: true,
              from: true,
              container: true,
              moisturePercent: true,
              store: { select: { name: true, targetTemperatureC: true } },
            },
          },
          movements: {
            // As recorded: the ledger is a history of entries, whatever day each is about.
            orderBy: { id: 'asc' },
            select: {
              id: true,
              on: true,
              reason: true,
              seeds: true,
              grams: true,
              note: true,
              byId: true,
              corrected: { select: { id: true } },
              corrects: { select: { on: true, reason: true } },
            },
          },
        },
      },
    },
  });
  if (!lot) return null;
  const names = await namesOf(lot.packets.flatMap((packet) => packet.movements.map((movement) => movement.byId)));
  const packets = lot.packets.map(({ placements, movements, ...packet }): PacketRow => {
    let balance = 0;
    const places = placements.map(({ store, ...placement }) => ({
      ...placement,
      storeName: store.name,
      targetTemperatureC: store.targetTemperatureC,
    }));
    const ledger = movements.map(({ corrected, byId, ...movement }) => {
      balance += movement.seeds;
      return { ...movement, balance, takenBack: corrected !== null, byName: names.get(byId) ?? null };
    });
    return { ...packet, seeds: balance, placement: places.at(-1) ?? null, placements: places, movements: ledger };
  });
  return { ...lot, packets };
}

export type LotPackets = NonNullable<Awaited<ReturnType<typeof getLotPackets>>>;

/** The same, by the number on the label. */
export async function getLotPacketsByNumber(number: string) {
  const lot = await reader().lot.findUnique({ where: { number }, select: { id: true } });
  return lot && getLotPackets(lot.id);
}
