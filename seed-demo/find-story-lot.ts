import { connections } from '../lib/server/database/connections';

/**
 * A lot that a scenario names by its accession and its place among that accession's lots, with its first packet.
 *
 * @param index  from the oldest harvest, 0
 * @throws RangeError when there is none, which would be a mistake of the scenario
 */
export async function findStoryLot(
  accession: string,
  index: number,
): Promise<{ number: string; cropId: string; packetId: string }> {
  const lots = await connections().reader.lot.findMany({
    where: { accession: { name: accession } },
    orderBy: { harvestedOn: 'asc' },
    select: {
      number: true,
      accession: { select: { cropId: true } },
      packets: { orderBy: { number: 'asc' }, take: 1, select: { id: true } },
    },
  });
  const lot = lots[index];
  const packetId = lot?.packets[0]?.id;
  if (!lot || !packetId) throw new RangeError(`findStoryLot: ${accession} has no lot ${index} with a packet`);
  return { number: lot.number, cropId: lot.accession.cropId, packetId };
}
