import 'server-only';
import { reader } from '../database/connections';

/** A tray as it was set. */
export interface TraySet {
  number: string;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  packetNumber: string | null;
  dishes: number[];
  temperatures: string | null;
  light: boolean;
  place: string | null;
  firstCountOn: string;
  /** of a test in groups, from 1; null for a fixed test */
  group: number | null;
}

/**
 * Trays by their numbers: one statement and its joins.
 *
 * @returns those that exist, in the order of their numbers
 * Checked in tests/server/queries/trays-set.test.ts
 */
export async function findTraysSet(numbers: readonly string[]): Promise<TraySet[]> {
  const trays = await reader().tray.findMany({
    where: { number: { in: [...numbers] } },
    orderBy: { number: 'asc' },
    select: {
      number: true,
      temperatures: true,
      light: true,
      place: true,
      firstCountOn: true,
      sequentialPlan: true,
      groupNumber: true,
      packet: { select: { number: true } },
      dishes: { orderBy: { position: 'asc' }, select: { seeds: true } },
      lot: { select: { number: true, accession: { select: { name: true, crop: { select: { name: true } } } } } },
    },
  });
  return trays.map(({ lot, packet, dishes, sequentialPlan, groupNumber, ...tray }) => ({
    ...tray,
    lotNumber: lot.number,
    accessionName: lot.accession.name,
    cropName: lot.accession.crop.name,
    packetNumber: packet?.number ?? null,
    dishes: dishes.map(({ seeds }) => seeds),
    group: sequentialPlan === null ? null : groupNumber,
  }));
}
