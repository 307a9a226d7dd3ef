import 'server-only';
import { type DryingTarget, dryingTarget } from '@/lib/domain/moisture/drying-target';
import { type MoistureHistory, moistureHistory } from '@/lib/domain/moisture/moisture-history';
import { type OvenDish, type OvenDishes, ovenDishes } from '@/lib/domain/moisture/oven-dishes';
import { type SealDoubt, sealDoubt } from '@/lib/domain/moisture/seal-doubt';
import { stayMoistures } from '@/lib/domain/moisture/stay-moisture';
import type { Placement } from '@/lib/domain/stock/storage-history';
import { connections, reader } from '../database/connections';
import { type CropJudging, loadCropJudging } from '../judging/load-crop-judging';
import { packetMoistureTests, standardPoints } from '../moisture/packet-moisture-tests';
import { today } from '../today';

export interface RecordedMoistureTest {
  id: string;
  number: string;
  testedOn: string;
  method: string;
  moisturePercent: number;
  /** one standard deviation, points */
  standardPoints: number;
  relativeHumidity: number | null;
  temperatureC: number | null;
  notes: string | null;
  packet: { id: string; number: string } | null;
  dishes: OvenDish[];
  /** what the dishes say; null where there are none */
  oven: OvenDishes | null;
  correctsNumber: string | null;
  correctedByNumber: string | null;
  /** seeds that it used, taken out of the packet; null where none were */
  seedsUsed: number | null;
}

export interface PacketMoisture {
  id: string;
  number: string;
  seeds: number;
  storeName: string | null;
  /** the present stay, with what its tests tell filled in; null where the packet lies nowhere */
  stay: Placement | null;
  doubt: SealDoubt | null;
}

export interface LotMoisture {
  number: string;
  harvestedOn: string;
  treatment: string | null;
  accessionName: string;
  crop: CropJudging;
  /** the crop's oil as a range, fraction of dry weight; null where the reference has none */
  oil: { lower: number; upper: number } | null;
  /** null where the crop has no constants */
  target: DryingTarget | null;
  /** newest first; those corrected since too */
  tests: RecordedMoistureTest[];
  packets: PacketMoisture[];
  history: MoistureHistory | null;
}

/**
 * All that is known of a lot's moisture, by the number on the label: a few queries however many tests.
 *
 * @returns null when there is no such lot
 * Checked in tests/server/commands/record-moisture-test.test.ts
 */
export async function getLotMoisture(number: string): Promise<LotMoisture | null> {
  const lot = await reader().lot.findUnique({
    where: { number },
    select: {
      id: true,
      number: true,
      harvestedOn: true,
      treatment: true,
      accession: {
        select: {
          name: true,
          cropId: true,
          crop: { select: { facts: { where: { kind: 'oil fraction' }, select: { lower: true, upper: true } } } },
        },
      },
      moistureTests: {
        orderBy: [{ testedOn: 'desc' }, { number: 'desc' }],
        select: {
          id: true,
          number: true,
          testedOn: true,
          method: true,
          moisturePercent: true,
          relativeHumidity: true,
          temperatureC: true,
          notes: true,
          packet: { select: { id: true, number: true } },
          dishes: { omit: { testId: true, position: true }, orderBy: { position: 'asc' } },
          corrects: { select: { number: true } },
          correctedBy: { select: { number: true } },
          withdrawal: { select: { seeds: true } },
        },
      },
      packets: {
        orderBy: { number: 'asc' },
        select: {
          id: true,
          number: true,
          placements: {
            where: { from: { lte: today() } },
            orderBy: [{ from: 'asc' }, { id: 'asc' }],
            select: {
              storeId: true,
              from: true,
              container: true,
              moisturePercent: true,
              store: { select: { name: true } },
            },
          },
        },
      },
    },
  });
  if (!lot) return null;
  const { rows } = connections();
  const [crop] = loadCropJudging(rows, [lot.accession.cropId]).values();
  if (!crop) throw new Error(`the crop of lot ${lot.number} does not exist`);
  const byPacket = packetMoistureTests(rows, 'IN (@lotId)', { lotId: lot.id });
  const seedsOf = await seedsInPackets(lot.packets.map(({ id }) => id));
  const tests = lot.moistureTests.map(
    ({ corrects, correctedBy, withdrawal, ...test }): RecordedMoistureTest => ({
      ...test,
      standardPoints: standardPoints(test.method, test.dishes),
      oven: test.dishes.length < 2 ? null : ovenDishes(test.dishes),
      correctsNumber: corrects?.number ?? null,
      correctedByNumber: correctedBy?.number ?? null,
      seedsUsed: withdrawal ? -withdrawal.seeds : null,
    }),
  );
  const filled = lot.packets.map(({ id, number: packetNumber, placements }) => ({
    number: packetNumber,
    placements: stayMoistures(placements, byPacket.get(id) ?? []),
  }));
  return {
    number: lot.number,
    harvestedOn: lot.harvestedOn,
    treatment: lot.treatment,
    accessionName: lot.accession.name,
    crop,
    oil: oilOf(lot.accession.crop.facts),
    target: crop.seed && dryingTarget(crop.seed),
    tests,
    packets: lot.packets.map(({ id, number: packetNumber, placements }, index) => ({
      id,
      number: packetNumber,
      seeds: seedsOf.get(id) ?? 0,
      storeName: placements.at(-1)?.store.name ?? null,
      stay: filled[index]?.placements.at(-1) ?? null,
      doubt: sealDoubt(placements, byPacket.get(id) ?? []),
    })),
    history: moistureHistory(
      filled,
      tests.filter(({ correctedByNumber }) => correctedByNumber === null),
      today(),
    ),
  };
}

async function seedsInPackets(ids: string[]): Promise<Map<string, number>> {
  const sums = await reader().movement.groupBy({
    by: ['packetId'],
    where: { packetId: { in: ids } },
    _sum: { seeds: true },
  });
  return new Map(sums.map((sum) => [sum.packetId, sum._sum.seeds ?? 0]));
}

function oilOf(facts: { lower: number | null; upper: number | null }[]): LotMoisture['oil'] {
  const lower = facts.flatMap((fact) => fact.lower ?? []);
  const upper = facts.flatMap((fact) => fact.upper ?? []);
  return lower.length === 0 || upper.length === 0 ? null : { lower: Math.min(...lower), upper: Math.max(...upper) };
}
