import 'server-only';
import { isFreeForTest } from '@/lib/domain/stock/free-withdrawal';
import { reader } from '../database/connections';
import { NAMED_BY_NO_TEST } from '../named-by-tests';
import { type CropForTesting, cropForTesting, type LotForTesting, selectCropForTesting } from './lots-for-testing';
import { getLotsToPlan, type LotToPlan } from './lots-to-plan';

/** A lot that is about to be set, with everything its row of the form offers. */
export interface TrayToPlan extends LotToPlan {
  treatment: string | null;
  crop: CropForTesting;
  /** the one proposed first, then the fullest */
  packets: LotForTesting['packets'];
  takenOut: LotForTesting['takenOut'];
}

/**
 * Lots by their numbers with packets, methods and seed taken out before: five statements beside those of the plan,
 * however many lots.
 *
 * @returns those that exist, in the order asked
 * Checked in tests/server/queries/lots-to-plan.test.ts
 */
export async function findTraysToPlan(numbers: readonly string[], today: string): Promise<TrayToPlan[]> {
  const planned = await getLotsToPlan(numbers, today);
  const wanted = { number: { in: planned.map(({ lotNumber }) => lotNumber) } };
  const [lots, lines, sums] = await Promise.all([
    reader().lot.findMany({
      where: wanted,
      select: {
        number: true,
        treatment: true,
        accession: { select: { crop: { select: selectCropForTesting } } },
        packets: { select: { id: true, number: true, role: true } },
      },
    }),
    reader().movement.findMany({
      where: { packet: { lot: wanted }, reason: 'test', corrected: null, ...NAMED_BY_NO_TEST },
      orderBy: [{ on: 'desc' }, { id: 'desc' }],
      select: {
        id: true,
        on: true,
        reason: true,
        seeds: true,
        note: true,
        packet: { select: { number: true, lot: { select: { number: true } } } },
      },
    }),
    reader().movement.groupBy({ by: ['packetId'], where: { packet: { lot: wanted } }, _sum: { seeds: true } }),
  ]);
  const held = new Map(sums.map(({ packetId, _sum }) => [packetId, _sum.seeds ?? 0]));
  const free = lines.filter((line) => isFreeForTest({ ...line, usedBy: 0, takenBack: false }));
  const byNumber = new Map(lots.map((lot) => [lot.number, lot]));
  return planned.flatMap((plan): TrayToPlan[] => {
    const lot = byNumber.get(plan.lotNumber);
    if (!lot) return [];
    return [
      {
        ...plan,
        treatment: lot.treatment,
        crop: cropForTesting(lot.accession.crop),
        packets: lot.packets
          .map((packet) => ({ ...packet, seeds: held.get(packet.id) ?? 0 }))
          .filter(({ seeds }) => seeds > 0)
          .sort((a, b) => Number(b.id === plan.packetId) - Number(a.id === plan.packetId) || b.seeds - a.seeds),
        takenOut: free
          .filter(({ packet }) => packet.lot.number === plan.lotNumber)
          .map(({ id, on, seeds, packet }) => ({ id, on, seeds: -seeds, packetNumber: packet.number })),
      },
    ];
  });
}
