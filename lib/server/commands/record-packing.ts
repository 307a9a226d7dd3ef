import type { Prisma } from '@/generated/prisma/client';
import { isHermetic } from '@/lib/domain/stock/containers';
import { type DesiccantKey, desiccantDueOn } from '@/lib/domain/stock/desiccants';
import { newId } from '../new-id';

interface Packing {
  packetId: string;
  on: string;
  byId: string;
  container: string;
  sealed: boolean;
  desiccant?: DesiccantKey | undefined;
  desiccantGrams?: number | undefined;
  changeDueOn?: string | undefined;
}

/**
 * Writes down how seed was packed: sealed or not yet, and with which desiccant. What went before no longer holds: a
 * desiccant of the old container did not come along.
 *
 * @param hadDesiccant  the old container had one
 */
export async function recordPacking(
  tx: Prisma.TransactionClient,
  packing: Packing,
  hadDesiccant: boolean,
): Promise<void> {
  const { packetId, on, byId } = packing;
  if (packing.desiccant)
    await tx.packetCare.create({ data: desiccantLine({ ...packing, desiccant: packing.desiccant }) });
  else if (hadDesiccant) {
    const note = 'none in the new container';
    await tx.packetCare.create({ data: { id: newId(), packetId, on, byId, what: 'desiccant', note } });
  }
  if (!isHermetic(packing.container)) return;
  const sealed = packing.sealed ? { what: 'sealed' } : { what: 'opened', note: 'packed, not sealed yet' };
  await tx.packetCare.create({ data: { id: newId(), packetId, on, byId, ...sealed } });
}

/** The line for a desiccant that was put in; its day of change is the usual one unless somebody chose another. */
export function desiccantLine({
  packetId,
  on,
  byId,
  desiccant,
  desiccantGrams,
  changeDueOn,
}: Pick<Packing, 'packetId' | 'on' | 'byId' | 'desiccantGrams' | 'changeDueOn'> & { desiccant: DesiccantKey }) {
  const due = changeDueOn ?? desiccantDueOn(desiccant, on);
  return { id: newId(), packetId, on, byId, what: 'desiccant', desiccant, desiccantGrams, changeDueOn: due };
}
