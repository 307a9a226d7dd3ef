import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { assumedCorrelation, type Dish } from '@/lib/domain/germination/assumed-correlation';
import type { LotTest } from '@/lib/domain/longevity/lot-model';
import { type PacketAgeing, packetAgeing } from '@/lib/domain/longevity/packet-ageing';
import { splitStays } from '@/lib/domain/stock/split-stays';
import { type StoragePeriod, storageHistory } from '@/lib/domain/stock/storage-history';
import type { CropJudging } from './load-crop-judging';
import type { LotRecord, PacketRecord, TestRecord } from './load-lots';
import type { StoreClimates } from './store-climates';

/** A test with its sums and its place in the lot's ageing. */
export interface EvaluatedTest extends TestRecord {
  /** seeds alive: normal, hard and fresh */
  alive: number;
  sown: number;
  /** published ageing up to the day it was set, probits; null without a forecast */
  probitsLost: number | null;
}

export interface AgedTests {
  /** the packet with most seed: where it lies is where the lot is judged to lie */
  mainPacket: PacketRecord | null;
  /** of that packet */
  ageing: PacketAgeing | null;
  tests: EvaluatedTest[];
}

/** A lot's tests, each placed in the ageing of the packet it came from. */
export function ageTests(lot: LotRecord, crop: CropJudging, climates: StoreClimates, today: string): AgedTests {
  const mainPacket = packetWithMostSeed(lot.packets);
  const ageings = new Map<string, PacketAgeing | null>();
  const ageingOf = (packet: PacketRecord | null) => {
    if (!packet) return null;
    let known = ageings.get(packet.id);
    if (known === undefined) {
      known = ageingOfPacket(packet, crop, climates, today);
      ageings.set(packet.id, known);
    }
    return known;
  };
  const tests = lot.tests.map((test): EvaluatedTest => {
    const packet = lot.packets.find((candidate) => candidate.id === test.packetId) ?? mainPacket;
    const own = ageingOf(packet);
    return {
      ...test,
      alive: test.replicates.reduce((sum, replicate) => sum + aliveIn(replicate), 0),
      sown: test.replicates.reduce((sum, replicate) => sum + replicate.seeds, 0),
      probitsLost: own?.ok ? own.probitsAt(toEpochDay(test.setOn)) : null,
    };
  });
  return { mainPacket, ageing: ageingOf(mainPacket), tests };
}

/**
 * The tests as the lot model takes them. Where dishes are uneven each counts by itself, since it is within a dish that
 * seeds resemble one another.
 */
export function testsForModel(tests: readonly EvaluatedTest[]): {
  tests: LotTest[];
  intraReplicateCorrelation: number;
} {
  const intraReplicateCorrelation = assumedCorrelation(tests.map(dishesOf));
  return {
    tests: tests.flatMap((test) => {
      const { probitsLost, alive, sown } = test;
      if (probitsLost === null) return [];
      if (intraReplicateCorrelation === 0) return [{ probitsLost, germinated: alive, sown }];
      return dishesOf(test).map(({ counted, seeds }) => ({ probitsLost, germinated: counted, sown: seeds }));
    }),
    intraReplicateCorrelation,
  };
}

/**
 * A packet's stays up to today, each under one climate. A placement planned for a later day says nothing of the seed yet.
 */
export function staysUntil(
  { placements }: Pick<PacketRecord, 'placements'>,
  climates: StoreClimates,
  today: string,
): StoragePeriod[] {
  const stays = storageHistory(
    placements.filter((placement) => placement.from <= today),
    today,
  );
  return splitStays(stays, climates.climatesThrough);
}

function packetWithMostSeed(packets: PacketRecord[]): PacketRecord | null {
  const placed = packets.filter((packet) => packet.placements.length > 0);
  return placed.reduce<PacketRecord | null>(
    (most, packet) => (most && most.seeds >= packet.seeds ? most : packet),
    null,
  );
}

/** The ageing of one packet up to today; null where no constants are chosen, or nobody wrote where it has been. */
export function ageingOfPacket(
  packet: PacketRecord,
  crop: CropJudging,
  climates: StoreClimates,
  today: string,
): PacketAgeing | null {
  if (!crop.seed) return null;
  const periods = staysUntil(packet, climates, today);
  return periods.length === 0 ? null : packetAgeing(periods, climates.climateOf, crop.seed);
}

const dishesOf = ({ replicates }: TestRecord): Dish[] =>
  replicates.map((replicate) => ({ seeds: replicate.seeds, counted: aliveIn(replicate) }));

const aliveIn = ({ normal, hard, fresh }: TestRecord['replicates'][number]) => normal + hard + fresh;
