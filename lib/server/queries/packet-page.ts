import 'server-only';
import type { UncertainBalance } from '@/lib/domain/stock/balance-uncertainty';
import { reader } from '../database/connections';
import { today } from '../today';
import { evaluateOne } from './lot-page';
import { namesOf } from './names-of';
import { type PacketForecast, packetForecasts } from './packet-forecast';
import { getPacketLedgers, type PacketLedger } from './packet-ledgers';
import { findStock, type StockedPacket } from './stock';
import { findStorePaths, type StorePath } from './store-paths';

/** The lot that a packet is of, as a label names it. */
export interface PacketLot {
  id: string;
  number: string;
  harvestedOn: string;
  treatment: string | null;
  accession: { id: string; number: string; name: string; crop: { id: string; name: string; scientificName: string } };
}

export interface PacketStay {
  id: string;
  path: StorePath | null;
  from: string;
  /** the day on which the next one began; null while it goes on */
  to: string | null;
  container: string;
  moisturePercent: number | null;
}

export interface CareDone {
  id: string;
  on: string;
  what: string;
  desiccant: string | null;
  desiccantGrams: number | null;
  changeDueOn: string | null;
  note: string | null;
  byName: string | null;
}

export interface PacketPage extends StockedPacket {
  lot: PacketLot;
  held: UncertainBalance;
  forecast: PacketForecast;
  /** latest first */
  stays: PacketStay[];
  /** latest first */
  careDone: CareDone[];
  ledger: PacketLedger['lines'];
}

const LOT = {
  id: true,
  number: true,
  harvestedOn: true,
  treatment: true,
  accession: {
    select: {
      id: true,
      number: true,
      name: true,
      crop: { select: { id: true, name: true, scientificName: true } },
    },
  },
} as const;

/** A packet with the lot it is of: what every form about it shows. Null when there is no such number. */
export async function getPacket(number: string): Promise<(StockedPacket & { lot: PacketLot }) | null> {
  const [[packet], found] = await Promise.all([
    findStock({ number }),
    reader().packet.findUnique({ where: { number }, select: { lot: { select: LOT } } }),
  ]);
  return packet && found ? { ...packet, lot: found.lot } : null;
}

/** Everything that a packet's page says. Null when there is no such number. */
export async function getPacketPage(number: string): Promise<PacketPage | null> {
  const packet = await getPacket(number);
  if (!packet) return null;
  const [stored, ledgers, paths] = await Promise.all([
    reader().packet.findUniqueOrThrow({
      where: { number },
      select: {
        placements: {
          orderBy: [{ from: 'asc' }, { id: 'asc' }],
          select: { id: true, storeId: true, from: true, container: true, moisturePercent: true },
        },
        care: {
          orderBy: [{ on: 'desc' }, { id: 'desc' }],
          select: {
            id: true,
            on: true,
            what: true,
            desiccant: true,
            desiccantGrams: true,
            changeDueOn: true,
            note: true,
            byId: true,
          },
        },
        lot: { select: { accession: { select: { lots: { select: { id: true } } } } } },
      },
    }),
    getPacketLedgers([packet.id]),
    findStorePaths(),
  ]);
  const ledger = ledgers.get(packet.id) as PacketLedger;
  const names = await namesOf(stored.care.map(({ byId }) => byId));
  const company = stored.lot.accession.lots.map(({ id }) => id);
  const { evaluated, crop, climates } = evaluateOne(packet.lot.id, company);
  const stays = stored.placements.map(({ storeId, ...placement }, index) => ({
    ...placement,
    path: paths.get(storeId) ?? null,
    to: stored.placements[index + 1]?.from ?? null,
  }));
  return {
    ...packet,
    held: ledger.held,
    ledger: ledger.lines,
    forecast: packetForecasts(evaluated, crop, climates, today()).get(packet.id) as PacketForecast,
    stays: stays.reverse(),
    careDone: stored.care.map(({ byId, ...line }) => ({ ...line, byName: names.get(byId) ?? null })),
  };
}
