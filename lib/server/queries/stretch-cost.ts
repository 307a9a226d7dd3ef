import 'server-only';
import { type ClimateCost, climateCost } from '@/lib/domain/longevity/climate-cost';
import { normalCdf, normalQuantile } from '@/lib/domain/statistics/normal-distribution';
import type { CropJudging } from '../judging/load-crop-judging';
import type { StoreClimates } from '../judging/store-climates';
import type { PacketInStretch } from './packets-in-stretch';

/**
 * What a stretch of days cost the sealed, or the open, seed of a crop in a store: the medians of those of its packets that
 * lay there for most of the days. Packets that came later would only thin the figure.
 */
export interface CropCost {
  cropId: string;
  cropName: string;
  sealed: boolean;
  packets: number;
  lots: number;
  /** that the seed these figures are of lay there */
  days: number;
  extraProbits: number;
  normalDays: number;
  /** of these lots today, and what it would be without the cost; null where none has a forecast */
  viability: { now: number; without: number } | null;
}

/** A packet and what the stretch cost it. */
export interface PacketCost {
  packet: PacketInStretch;
  sealed: boolean;
  cost: ClimateCost;
}

/** Seed for which no cost can be told, and why. */
export interface UncountedSeed {
  cropName: string;
  packets: number;
  reason: string;
}

export interface StretchCost {
  crops: CropCost[];
  packets: PacketCost[];
  uncounted: UncountedSeed[];
}

const NO_CONSTANTS = 'No longevity constants are chosen for this crop.';

/** The costs of packets over the days of their stays: each kind of stay is reckoned once. */
export function stretchCost(
  packets: readonly PacketInStretch[],
  crops: ReadonlyMap<string, CropJudging>,
  climates: StoreClimates,
): StretchCost {
  const costOfStay = stayCosts(crops, climates);
  const counted: PacketCost[] = [];
  const uncounted = new Map<string, UncountedSeed>();
  for (const packet of packets) {
    const cost = sumOfStays(packet.stays.map((stay) => costOfStay(packet.cropId, stay)));
    if (cost.ok) {
      counted.push({ packet, sealed: packet.stays.at(-1)?.period.hermetic === true, cost });
      continue;
    }
    const key = `${packet.cropId} ${cost.reason}`;
    const known = uncounted.get(key);
    if (known) known.packets += 1;
    else uncounted.set(key, { cropName: nameOf(packet, crops), packets: 1, reason: cost.reason });
  }
  return { crops: byCrop(counted, crops), packets: counted, uncounted: [...uncounted.values()] };
}

type Cost = ReturnType<typeof climateCost>;
type Stay = PacketInStretch['stays'][number];

/** A cost by what it depends on: thousands of packets were put in on the same few days at the same few moistures. */
function stayCosts(crops: ReadonlyMap<string, CropJudging>, climates: StoreClimates) {
  const known = new Map<string, Cost>();
  return (cropId: string, { period, fromDay, toDay }: Stay): Cost => {
    const seed = crops.get(cropId)?.seed;
    if (!seed) return { ok: false, reason: NO_CONSTANTS };
    const { climateId, hermetic, moisturePercent, from, to } = period;
    // Whether open seed was too moist to tell is judged over its whole stay, as its forecast does.
    const depends = hermetic ? moisturePercent : `${from} ${to}`;
    const key = `${cropId} ${climateId} ${hermetic} ${depends} ${fromDay} ${toDay}`;
    let cost = known.get(key);
    if (!cost) {
      cost = climateCost([period], climates.climateOf, seed, fromDay, toDay);
      known.set(key, cost);
    }
    return cost;
  };
}

function sumOfStays(costs: readonly Cost[]): Cost {
  const sum = { days: 0, daysRead: 0, probits: 0, normalProbits: 0, extraProbits: 0, normalDays: 0 };
  for (const cost of costs) {
    if (!cost.ok) return cost;
    for (const key of Object.keys(sum) as (keyof typeof sum)[]) sum[key] += cost[key];
  }
  return { ok: true, ...sum };
}

function byCrop(packets: readonly PacketCost[], crops: ReadonlyMap<string, CropJudging>): CropCost[] {
  const groups = new Map<string, PacketCost[]>();
  for (const packet of packets) {
    const key = `${packet.packet.cropId} ${packet.sealed}`;
    const group = groups.get(key);
    if (group) group.push(packet);
    else groups.set(key, [packet]);
  }
  const costs = [...groups.values()].map((group): CropCost => {
    const [{ packet, sealed }] = group as [PacketCost];
    const longest = group.reduce((most, { cost }) => Math.max(most, cost.days), 0);
    const throughout = group.filter(({ cost }) => cost.days === longest);
    const extraProbits = median(throughout.map(({ cost }) => cost.extraProbits));
    const viabilities = throughout.flatMap(({ packet: { viability } }) => (viability === null ? [] : [viability]));
    return {
      cropId: packet.cropId,
      cropName: nameOf(packet, crops),
      sealed,
      packets: group.length,
      lots: new Set(group.map((one) => one.packet.lotId)).size,
      extraProbits,
      days: longest,
      normalDays: median(throughout.map(({ cost }) => cost.normalDays)),
      viability: viabilities.length === 0 ? null : withoutCost(median(viabilities), extraProbits),
    };
  });
  return costs.sort((a, b) => pointsOf(b) - pointsOf(a) || b.normalDays - a.normalDays);
}

const pointsOf = ({ viability }: CropCost) => (viability ? viability.without - viability.now : 0);

/** A viability of today and, at the published rate of ageing, what it would be had the probits not been lost. */
export function withoutCost(now: number, extraProbits: number): { now: number; without: number } {
  // At the very ends there is no probit to add to.
  return now <= 0 || now >= 1 ? { now, without: now } : { now, without: normalCdf(normalQuantile(now) + extraProbits) };
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2;
}

const nameOf = ({ cropId }: PacketInStretch, crops: ReadonlyMap<string, CropJudging>) => crops.get(cropId)?.name ?? '';

/** The seed that some days cost most, as time at the target. */
export interface CostliestSeed {
  cropName: string;
  normalDays: number;
}

/**
 * For single failures within the stretch: which crop each cost most. A cost as time does not hang on a sealed packet's
 * moisture, so one stay of each crop in each climate answers for all.
 */
export function costliestOf(
  packets: readonly PacketInStretch[],
  crops: ReadonlyMap<string, CropJudging>,
  climates: StoreClimates,
): (fromDay: number, toDay: number) => CostliestSeed | null {
  const kinds = new Map<string, { packet: PacketInStretch; stay: Stay }>();
  for (const packet of packets) {
    for (const stay of packet.stays) {
      const key = `${packet.cropId} ${stay.period.climateId} ${stay.period.hermetic}`;
      const known = kinds.get(key);
      if (!known || stay.toDay - stay.fromDay > known.stay.toDay - known.stay.fromDay) kinds.set(key, { packet, stay });
    }
  }
  return (fromDay, toDay) => {
    let most: CostliestSeed | null = null;
    for (const { packet, stay } of kinds.values()) {
      const seed = crops.get(packet.cropId)?.seed;
      const [from, to] = [Math.max(fromDay, stay.fromDay), Math.min(toDay, stay.toDay)];
      if (!seed || from >= to) continue;
      const cost = climateCost([stay.period], climates.climateOf, seed, from, to);
      if (cost.ok && cost.normalDays > (most?.normalDays ?? 0)) {
        most = { cropName: nameOf(packet, crops), normalDays: cost.normalDays };
      }
    }
    return most;
  };
}
