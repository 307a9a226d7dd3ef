import 'server-only';
import { isHermetic } from '@/lib/domain/stock/containers';
import { type CareLine, nextCareDue, type PacketCareNow, packetCareNow } from '@/lib/domain/stock/packet-care';
import { reader } from '../database/connections';
import { findStorePaths, type StorePath } from './store-paths';

/** A packet as lists show it: what it is for, where it lies and in what, how much is in it, what its container wants. */
export interface StockedPacket {
  id: string;
  number: string;
  lotNumber: string;
  role: string;
  seeds: number;
  /** the latest placement; null where nobody wrote one down */
  place: (StorePath & { placementId: string; storeId: string }) | null;
  container: string | null;
  moisturePercent: number | null;
  since: string | null;
  care: PacketCareNow;
  /** what its container wants next, also in days to come */
  careDue: ReturnType<typeof nextCareDue>;
}

/**
 * Packets of some lots, or one packet by its number, in the order of their numbers: three statements, however many.
 *
 * Checked in tests/server/queries/stock.test.ts
 */
export async function findStock(of: { lotIds: string[] } | { number: string }): Promise<StockedPacket[]> {
  const where = 'number' in of ? { number: of.number } : { lotId: { in: of.lotIds } };
  const [packets, sums, paths] = await Promise.all([
    reader().packet.findMany({
      where,
      orderBy: { number: 'asc' },
      select: {
        id: true,
        number: true,
        role: true,
        lot: { select: { number: true } },
        placements: {
          orderBy: [{ from: 'desc' }, { id: 'desc' }],
          take: 1,
          select: { id: true, storeId: true, from: true, container: true, moisturePercent: true },
        },
        care: {
          orderBy: [{ on: 'asc' }, { id: 'asc' }],
          select: { on: true, what: true, desiccant: true, desiccantGrams: true, changeDueOn: true },
        },
      },
    }),
    reader().movement.groupBy({ by: ['packetId'], where: { packet: where }, _sum: { seeds: true } }),
    findStorePaths(),
  ]);
  const seeds = new Map(sums.map((sum) => [sum.packetId, sum._sum.seeds ?? 0]));
  return packets.map(({ lot, placements: [placement], care: lines, ...packet }) => {
    const path = placement && paths.get(placement.storeId);
    const care = packetCareNow(lines as CareLine[], placement !== undefined && isHermetic(placement.container));
    return {
      ...packet,
      lotNumber: lot.number,
      seeds: seeds.get(packet.id) ?? 0,
      place: placement && path ? { ...path, placementId: placement.id, storeId: placement.storeId } : null,
      container: placement?.container ?? null,
      moisturePercent: placement?.moisturePercent ?? null,
      since: placement?.from ?? null,
      care,
      careDue: nextCareDue(care),
    };
  });
}
