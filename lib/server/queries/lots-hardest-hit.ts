import 'server-only';
import type Database from 'better-sqlite3';
import { type CalendarDate, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { medianViability } from '@/lib/domain/longevity/lot-model';
import { ageingOfPacket } from '../judging/age-tests';
import { evaluateLot } from '../judging/evaluate-lot';
import type { CropJudging } from '../judging/load-crop-judging';
import { type LotRecord, loadLots } from '../judging/load-lots';
import type { StoreClimates } from '../judging/store-climates';
import { type PacketCost, withoutCost } from './stretch-cost';

/** A lot that a stretch of days cost most, by its own tests. */
export interface LotHit {
  lotNumber: string;
  accessionName: string;
  cropName: string;
  packetNumber: string;
  sealed: boolean;
  normalDays: number;
  extraProbits: number;
  /** of this packet today, and what it would be without the cost */
  viability: { now: number; without: number };
  /** so much sooner it falls below its line, if its present store keeps to its target from now on; null without a line */
  daysEarlier: number | null;
  /** below the line today, and would not be without the cost */
  fellBelow: boolean;
}

const LOTS_LISTED = 10;
/** By the judgement alone a lot that ages slower than published is ranked too high: more are evaluated than listed. */
const LOTS_EVALUATED = 3 * LOTS_LISTED;

/** The lots with seed left that lost most points of viability to a cost, the worst first. */
export function lotsHardestHit(
  rows: Database.Database,
  packets: readonly PacketCost[],
  crops: ReadonlyMap<string, CropJudging>,
  climates: StoreClimates,
  today: CalendarDate,
): LotHit[] {
  const chosen = worstPackets(packets);
  const lots = new Map(
    loadLots(
      rows,
      chosen.map(({ packet }) => packet.lotId),
    ).map((lot) => [lot.id, lot]),
  );
  return chosen
    .flatMap((packet): LotHit[] => {
      const lot = lots.get(packet.packet.lotId);
      const crop = crops.get(packet.packet.cropId);
      const hit = lot && crop && hitOf(lot, crop, packet, climates, today);
      return hit ? [hit] : [];
    })
    .sort((a, b) => pointsOf(b) - pointsOf(a))
    .slice(0, LOTS_LISTED);
}

/** One packet a lot: the one hit hardest. */
function worstPackets(packets: readonly PacketCost[]): PacketCost[] {
  const byLot = new Map<string, { loss: number; packet: PacketCost }>();
  for (const packet of packets) {
    const { viability, seeds, lotId } = packet.packet;
    if (viability === null || seeds <= 0 || packet.cost.extraProbits <= 0) continue;
    const { now, without } = withoutCost(viability, packet.cost.extraProbits);
    const known = byLot.get(lotId);
    if (!known || without - now > known.loss) byLot.set(lotId, { loss: without - now, packet });
  }
  return [...byLot.values()]
    .sort((a, b) => b.loss - a.loss)
    .slice(0, LOTS_EVALUATED)
    .map(({ packet }) => packet);
}

function hitOf(
  lot: LotRecord,
  crop: CropJudging,
  { packet, sealed, cost }: PacketCost,
  climates: StoreClimates,
  today: CalendarDate,
): LotHit | null {
  const { posterior, judgement } = evaluateLot(lot, crop, climates, { isOnlyLot: false }, today);
  const record = lot.packets.find(({ id }) => id === packet.id);
  const ageing = record && ageingOfPacket(record, crop, climates, today);
  if (!posterior || !ageing?.ok) return null;
  const probitsLost = ageing.probitsAt(toEpochDay(today));
  const viability = {
    now: medianViability(posterior, { probitsLost }),
    without: medianViability(posterior, { probitsLost: Math.max(0, probitsLost - cost.extraProbits) }),
  };
  const { threshold } = judgement;
  return {
    lotNumber: lot.number,
    accessionName: lot.accessionName,
    cropName: crop.name,
    packetNumber: packet.number,
    sealed,
    normalDays: cost.normalDays,
    extraProbits: cost.extraProbits,
    viability,
    daysEarlier: threshold === null ? null : cost.extraProbits / ageing.targetRatePerDay,
    fellBelow: threshold !== null && viability.now < threshold && viability.without >= threshold,
  };
}

const pointsOf = ({ viability }: LotHit) => viability.without - viability.now;
