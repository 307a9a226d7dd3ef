import 'server-only';
import { reader } from '../database/connections';
import { type UngerminatedSeed, ungerminatedSeed } from '../trays/ungerminated-seed';

/** Trays offered to choose from: the lot's latest. */
const TRAYS_OFFERED = 3;

/** A germination test of a lot whose seed left over may be examined. */
export interface TrayChoice {
  number: string;
  setOn: string;
  status: string;
}

/** The lot's latest germination tests that were set as trays, those given up left out. */
export async function findTraysOfLot(lotNumber: string): Promise<TrayChoice[]> {
  return reader().tray.findMany({
    where: { lot: { number: lotNumber }, status: { not: 'given-up' } },
    orderBy: [{ setOn: 'desc' }, { id: 'desc' }],
    take: TRAYS_OFFERED,
    select: { number: true, setOn: true, status: true },
  });
}

/**
 * A tray by the number on its label, with its lot's.
 *
 * @returns null when there is no such tray
 */
export async function getTrayToExamine(number: string): Promise<(UngerminatedSeed & { lotNumber: string }) | null> {
  const seed = await ungerminatedSeed(reader(), { number });
  if (!seed) return null;
  const lot = await reader().lot.findUniqueOrThrow({ where: { id: seed.lotId }, select: { number: true } });
  return { ...seed, lotNumber: lot.number };
}
