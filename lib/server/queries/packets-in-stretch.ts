import 'server-only';
import type Database from 'better-sqlite3';
import { type CalendarDate, fromEpochDay, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { stayMoistures } from '@/lib/domain/moisture/stay-moisture';
import { type DayStretch, daysInside } from '@/lib/domain/stock/days-inside';
import type { Placement, StoragePeriod } from '@/lib/domain/stock/storage-history';
import { staysUntil } from '../judging/age-tests';
import type { StoreClimates } from '../judging/store-climates';
import { packetMoistureTests } from '../moisture/packet-moisture-tests';

/** A packet that held seed in a store, or in one that stood in it, on some of the days asked about. */
export interface PacketInStretch {
  id: string;
  number: string;
  lotId: string;
  cropId: string;
  /** seeds left today */
  seeds: number;
  /** of the lot today, by its judgement; null without a forecast */
  viability: number | null;
  /** its stays in these stores, cut to the days asked about; what each stay was as a whole stands beside it */
  stays: { period: StoragePeriod; fromDay: number; toDay: number }[];
}

interface PacketRow extends Omit<PacketInStretch, 'stays'> {
  seedsBefore: number;
  arrived: number;
}

/**
 * Packets that lay in a store, or in those inside it, on some of the days from `fromDay` to `toDay` (not included). Four
 * statements, however many packets there are.
 */
export function packetsInStretch(
  rows: Database.Database,
  climates: StoreClimates,
  storeId: string,
  { fromDay, toDay, today }: { fromDay: number; toDay: number; today: CalendarDate },
): PacketInStretch[] {
  const inside = storesInside(rows, climates, storeId, fromDay, toDay);
  const asked = { ids: JSON.stringify([...inside.keys()]), from: fromEpochDay(fromDay), to: fromEpochDay(toDay) };
  const packets = readPackets(rows, asked);
  const placements = readPlacements(rows, asked);
  const lotIds = JSON.stringify([...new Set(packets.map(({ lotId }) => lotId))]);
  const moistures = packetMoistureTests(rows, `IN (SELECT "value" FROM json_each(@ids))`, { ids: lotIds });
  return packets.flatMap(({ seedsBefore, arrived, ...packet }) => {
    // Emptied before, or filled only later: nothing of it was there.
    if (seedsBefore <= 0 && !arrived) return [];
    const written = placements.get(packet.id) ?? [];
    const tests = moistures.get(packet.id);
    const periods = staysUntil({ placements: tests ? stayMoistures(written, tests) : written }, climates, today);
    const stays = periods.flatMap((period) => staysWithin(period, inside.get(period.storeId), fromDay, toDay));
    return stays.length === 0 ? [] : [{ ...packet, stays }];
  });
}

/** Every store that stood in this one at some time of the stretch, itself too, with the days. */
function storesInside(
  rows: Database.Database,
  climates: StoreClimates,
  storeId: string,
  fromDay: number,
  toDay: number,
): Map<string, DayStretch[]> {
  const ids = rows.prepare<[], string>(`SELECT "id" FROM "Store"`).pluck().all();
  return new Map(
    ids.flatMap((id) => {
      const days = daysInside(id, storeId, climates.phasesOf).filter((d) => d.fromDay < toDay && d.toDay > fromDay);
      return days.length === 0 ? [] : [[id, days] as const];
    }),
  );
}

function staysWithin(period: StoragePeriod, inside: readonly DayStretch[] | undefined, fromDay: number, toDay: number) {
  if (!inside) return [];
  const [begins, ends] = [toEpochDay(period.from), toEpochDay(period.to)];
  return inside.flatMap((days) => {
    const cut = { fromDay: Math.max(begins, days.fromDay, fromDay), toDay: Math.min(ends, days.toDay, toDay) };
    return cut.fromDay < cut.toDay ? [{ period, ...cut }] : [];
  });
}

const OF_THESE = `IN (SELECT "packetId" FROM "Placement" WHERE "storeId" IN (SELECT "value" FROM json_each(@ids)) AND "from" < @to)`;

function readPackets(rows: Database.Database, asked: object): PacketRow[] {
  return rows
    .prepare<object, PacketRow>(
      `SELECT p."id", p."number", p."lotId", a."cropId", j."viabilityMedian" AS "viability", SUM(m."seeds") AS "seeds",
         SUM(CASE WHEN m."on" < @from THEN m."seeds" ELSE 0 END) AS "seedsBefore",
         MAX(m."on" >= @from AND m."on" < @to AND m."seeds" > 0) AS "arrived"
       FROM "Packet" p
       JOIN "Movement" m ON m."packetId" = p."id"
       JOIN "Lot" l ON l."id" = p."lotId" JOIN "Accession" a ON a."id" = l."accessionId"
       LEFT JOIN "LotJudgement" j ON j."lotId" = p."lotId"
       WHERE p."id" ${OF_THESE} GROUP BY p."id"`,
    )
    .all(asked);
}

function readPlacements(rows: Database.Database, asked: object): Map<string, Placement[]> {
  const placements = new Map<string, Placement[]>();
  for (const row of rows
    .prepare<object, Placement & { packetId: string }>(
      `SELECT "packetId", "storeId", "from", "container", "moisturePercent" FROM "Placement"
       WHERE "packetId" ${OF_THESE} ORDER BY "packetId", "from", "id"`,
    )
    .iterate(asked)) {
    const ofPacket = placements.get(row.packetId);
    if (ofPacket) ofPacket.push(row);
    else placements.set(row.packetId, [row]);
  }
  return placements;
}
