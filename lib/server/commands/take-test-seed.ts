import type { Prisma } from '@/generated/prisma/client';
import { newId } from '../new-id';
import { fieldError } from './field-error';

interface Withdrawal {
  packetId: string;
  /** whole seeds, as they were counted */
  seeds: number;
  on: string;
  /** of the ledger's line: the test that it is for */
  note: string;
  byId: string;
}

/** What is wrong with the packet, in the words of the kind of test. */
interface Refusals {
  overdrawn: (held: number) => string;
  filledLater: (filledOn: string) => string;
}

/**
 * Takes counted seed for a test out of its packet.
 *
 * @returns id of the ledger's line
 * @throws AppError beside `packetId` when the packet holds fewer seeds, or was filled after that day
 */
export async function takeTestSeed(
  tx: Prisma.TransactionClient,
  { packetId, seeds, on, note, byId }: Withdrawal,
  { overdrawn, filledLater }: Refusals,
): Promise<string> {
  const ledger = await tx.movement.aggregate({ where: { packetId }, _sum: { seeds: true }, _min: { on: true } });
  const held = ledger._sum.seeds ?? 0;
  if (seeds > held) throw fieldError({ packetId: overdrawn(held) });
  const filledOn = ledger._min.on;
  if (filledOn !== null && on < filledOn) throw fieldError({ packetId: filledLater(filledOn) });
  const id = newId();
  await tx.movement.create({
    data: { id, packetId, on, reason: 'test', seeds: -seeds, seedsSd: 0, note, byId },
  });
  return id;
}
