import 'server-only';
import type { CalendarDate } from '@/lib/domain/calendar/calendar-date';
import { medianViability } from '@/lib/domain/longevity/lot-model';
import { type StorageStrip, type StripStay, storageStrip } from '@/lib/domain/longevity/storage-strip';
import type { CareKind } from '@/lib/domain/stock/packet-care';
import { connections } from '../database/connections';
import { ageingOfPacket, staysUntil } from '../judging/age-tests';
import type { EvaluatedLot } from '../judging/evaluate-lot';
import type { CropJudging } from '../judging/load-crop-judging';
import type { StoreClimates } from '../judging/store-climates';
import { type ClimateSource, climateSources } from './climate-source';

/** A stay as the page names it. */
export interface NamedStay extends StripStay {
  storeName: string;
  /** the store whose logger counts, where it is another one; null: its own, or none */
  loggedIn: string | null;
  /** alive at the end of it, by the forecast; null without one */
  viability: number | null;
}

export interface PacketStrip extends Omit<StorageStrip, 'stays'> {
  packetId: string;
  packetNumber: string;
  seeds: number;
  stays: NamedStay[];
  /** of the store in which it lies now */
  source: ClimateSource | null;
  /** alive when it was first stored, by the forecast; null without one */
  viabilityStored: number | null;
}

/** The storage history of each packet of a lot, from the stays and the ageing that its forecast uses. Two queries. */
export function lotStrips(
  { lot, mainPacket, posterior }: EvaluatedLot,
  crop: CropJudging,
  climates: StoreClimates,
  today: CalendarDate,
): PacketStrip[] {
  const packets = readPackets(lot.id);
  const sources = climateSources();
  const viabilityAt = (probitsLost: number | null) =>
    posterior === null || probitsLost === null ? null : medianViability(posterior, { probitsLost });
  return lot.packets
    .flatMap((packet): PacketStrip[] => {
      const periods = staysUntil(packet, climates, today);
      const written = packets.get(packet.id);
      if (!periods.some(({ from, to }) => from < to) || !written) return [];
      const strip = storageStrip({
        harvestedOn: lot.harvestedOn,
        placements: packet.placements,
        periods,
        ageing: ageingOfPacket(packet, crop, climates, today),
        climateOf: climates.climateOf,
        care: written.care,
      });
      return [
        {
          ...strip,
          packetId: packet.id,
          packetNumber: written.number,
          seeds: packet.seeds,
          stays: strip.stays.map((stay) => ({
            ...stay,
            storeName: climates.nameOf(stay.storeId),
            loggedIn: loggedElsewhere(climates, stay),
            viability: viabilityAt(stay.probitsSoFar),
          })),
          source: sources.get(periods.at(-1)?.storeId ?? '') ?? null,
          viabilityStored: viabilityAt(strip.line[0]?.probits ?? null),
        },
      ];
    })
    .sort((a, b) => Number(b.packetId === mainPacket?.id) - Number(a.packetId === mainPacket?.id) || b.seeds - a.seeds);
}

function loggedElsewhere(climates: StoreClimates, { climateId, storeId }: StripStay): string | null {
  const { loggedStoreId } = climates.sourceOf(climateId);
  return loggedStoreId === null || loggedStoreId === storeId ? null : climates.nameOf(loggedStoreId);
}

interface WrittenPacket {
  number: string;
  care: { on: CalendarDate; what: CareKind }[];
}

function readPackets(lotId: string): Map<string, WrittenPacket> {
  const { rows } = connections();
  const packets = new Map(
    rows
      .prepare<[string], { id: string; number: string }>(`SELECT "id", "number" FROM "Packet" WHERE "lotId" = ?`)
      .all(lotId)
      .map(({ id, number }): [string, WrittenPacket] => [id, { number, care: [] }]),
  );
  for (const { packetId, ...line } of rows
    .prepare<[string], { packetId: string; on: CalendarDate; what: CareKind }>(
      `SELECT c."packetId", c."on", c."what" FROM "PacketCare" c JOIN "Packet" p ON p."id" = c."packetId"
       WHERE p."lotId" = ? ORDER BY c."on", c."id"`,
    )
    .iterate(lotId)) {
    packets.get(packetId)?.care.push(line);
  }
  return packets;
}
