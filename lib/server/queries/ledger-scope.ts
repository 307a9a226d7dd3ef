import 'server-only';
import { reader } from '../database/connections';
import type { LedgerScope } from './ledger';

/** A lot as the head of its ledger names it; null when there is none of that number. */
export async function getLotPlate(number: string) {
  const lot = await reader().lot.findUnique({
    where: { number },
    select: { id: true, number: true, thousandSeedWeightG: true, accession: { select: { name: true } } },
  });
  if (!lot) return null;
  const { accession, ...rest } = lot;
  return { ...rest, accessionName: accession.name };
}

/** An accession as the head of its ledger names it; null when there is none of that number. */
export async function getAccessionPlate(number: string) {
  return reader().accession.findUnique({ where: { number }, select: { id: true, number: true, name: true } });
}

/**
 * Whose ledger an address names.
 *
 * @param asked  number of a lot or of an accession; neither means the whole bank
 * @returns null when there is none of that number
 */
export async function getLedgerScope(asked: { lot?: string; accession?: string }): Promise<LedgerScope | null> {
  if (asked.lot) {
    const lot = await getLotPlate(asked.lot);
    return lot && { lotId: lot.id };
  }
  if (asked.accession) {
    const accession = await getAccessionPlate(asked.accession);
    return accession && { accessionId: accession.id };
  }
  return {};
}
