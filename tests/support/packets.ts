import { reader } from '@/lib/server/database/connections';

/** A packet as it is stored, with all that hangs on it, each in order. */
export const storedPacket = (id: string) =>
  reader().packet.findUniqueOrThrow({
    where: { id },
    include: {
      placements: { orderBy: [{ from: 'asc' }, { id: 'asc' }] },
      movements: { orderBy: { id: 'asc' } },
      care: { orderBy: [{ on: 'asc' }, { id: 'asc' }] },
    },
  });

/** Seeds that a packet holds by its ledger. */
export const seedsIn = async (id: string): Promise<number> =>
  (await storedPacket(id)).movements.reduce((sum, { seeds }) => sum + seeds, 0);
