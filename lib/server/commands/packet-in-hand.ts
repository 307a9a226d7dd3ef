import type { Prisma } from '@/generated/prisma/client';
import { CONTAINERS } from '@/lib/domain/stock/containers';
import { notFound } from '../app-error';
import { fieldError } from './field-error';
import { StaleVersion } from './stale-version';

export type PacketInHand = Awaited<ReturnType<typeof packetInHand>>;

/**
 * A packet that is about to be changed, with all its placements, oldest first, read in the transaction that changes it.
 *
 * @throws AppError 'not-found'
 */
export async function packetInHand(tx: Prisma.TransactionClient, packetId: string, what = 'This packet') {
  const packet = await tx.packet.findUnique({
    where: { id: packetId },
    select: {
      id: true,
      number: true,
      role: true,
      lot: {
        select: {
          id: true,
          number: true,
          thousandSeedWeightG: true,
          accession: { select: { id: true, cropId: true } },
        },
      },
      placements: {
        orderBy: [{ from: 'asc' }, { id: 'asc' }],
        select: {
          id: true,
          storeId: true,
          from: true,
          container: true,
          moisturePercent: true,
          store: { select: { name: true, targetTemperatureC: true } },
        },
      },
    },
  });
  if (!packet) throw notFound(what);
  return { ...packet, last: packet.placements.at(-1) ?? null };
}

/**
 * Two volunteers at once: refuses a form that was opened before the packet was moved or repacked, and says where it is.
 * Sent again, the form has seen it.
 *
 * @param seen  id of the last placement when the form was opened; undefined where nobody filled in a form
 * @throws StaleVersion
 */
export async function refuseMoved(
  tx: Prisma.TransactionClient,
  { id, number, last }: PacketInHand,
  seen: string | undefined,
): Promise<void> {
  if (seen === undefined || last === null || last.id === seen) return;
  const entry = await tx.auditEntry.findFirst({
    where: { entity: 'packet', entityId: id, command: { in: ['move-packet', 'repack-packet'] } },
    orderBy: { id: 'desc' },
    select: { byName: true },
  });
  const container = CONTAINERS.find(({ key }) => key === last.container)?.label ?? last.container;
  throw new StaleVersion<string>(
    [
      `Packet ${number} was moved or repacked while you were writing${entry ? `, by ${entry.byName}` : ''}, so yours is not saved yet.`,
      `It lies in ${last.store.name}, ${container}, since ${last.from}.`,
      'What you typed is still here: look it over and send it again.',
    ].join(' '),
    last.id,
  );
}

/**
 * @param on  a day on which the packet is moved, split or poured
 * @throws AppError beside `field` when the packet was moved later than that
 */
export function refuseBeforeLastMove({ number, last }: PacketInHand, on: string, field: string): void {
  if (last && on < last.from) {
    throw fieldError({
      [field]: `Packet ${number} has been in ${last.store.name} since ${last.from}: choose that day or later.`,
    });
  }
}
