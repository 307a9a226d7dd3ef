import type { Prisma } from '@/generated/prisma/client';
import { newId } from '../new-id';
import { fieldError } from './field-error';
import { requirePacketOfLot } from './require-packet-of-lot';
import { requireTestWithdrawal } from './require-test-withdrawal';

/** Where a tray's seed comes from: out of a packet now, or out of the ledger's line of an earlier day. */
export interface SeedForTray {
  packet: { id: string; number: string };
  seeds: number;
  /** seeds in the packet before; null where the seed went out before */
  held: number | null;
  /** the line by which it went out before; null where it goes out now */
  takenOut: { id: string; on: string; seeds: number } | null;
}

/**
 * Finds the seed of a tray and refuses what cannot be: too little in the packet, a packet of another lot, a packet filled
 * after the day, a line that is used already.
 *
 * @throws AppError beside `seedFrom`, or beside `setOn` when the seed came out later
 */
export async function findSeedForTray(
  tx: Prisma.TransactionClient,
  from: { kind: 'packet' | 'taken'; id: string },
  tray: { lot: { id: string; number: string }; seeds: number; setOn: string },
): Promise<SeedForTray> {
  const { lot, seeds, setOn } = tray;
  if (from.kind === 'taken') {
    const { packet, ...takenOut } = await besideSeedFrom(
      'withdrawalId',
      requireTestWithdrawal(tx, from.id, { lot, seeds, began: { on: setOn, field: 'setOn' } }),
    );
    return { packet, seeds, held: null, takenOut };
  }
  const packet = await besideSeedFrom('packetId', requirePacketOfLot(tx, from.id, lot));
  const ledger = await tx.movement.aggregate({
    where: { packetId: packet.id },
    _sum: { seeds: true },
    _min: { on: true },
  });
  const held = ledger._sum.seeds ?? 0;
  if (seeds > held) {
    throw fieldError({
      seedFrom: `Packet ${packet.number} holds ${held} seeds, and this takes ${seeds}: choose fewer seeds, or another packet.`,
    });
  }
  const filledOn = ledger._min.on;
  if (filledOn !== null && setOn < filledOn) {
    throw fieldError({
      seedFrom: `Packet ${packet.number} was filled on ${filledOn}, after that day: choose another packet, or a later day.`,
    });
  }
  return { packet, seeds, held, takenOut: null };
}

/** Takes the seed out of its packet; where it went out before, that line is named. @returns id of the ledger's line */
export async function takeSeedForTray(
  tx: Prisma.TransactionClient,
  { packet, seeds, takenOut }: SeedForTray,
  { on, number, byId }: { on: string; number: string; byId: string },
): Promise<string> {
  if (takenOut) return takenOut.id;
  const id = newId();
  const note = `Germination test ${number}`;
  await tx.movement.create({
    data: { id, packetId: packet.id, on, reason: 'test', seeds: -seeds, seedsSd: 0, note, byId },
  });
  return id;
}

/** The form has one field for both kinds of seed. */
async function besideSeedFrom<Found>(field: string, looking: Promise<Found>): Promise<Found> {
  try {
    return await looking;
  } catch (error) {
    const errors = (error as { fieldErrors?: Record<string, string> }).fieldErrors;
    const message = errors?.[field];
    throw message ? fieldError({ seedFrom: message }) : error;
  }
}
