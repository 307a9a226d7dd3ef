import type { Prisma } from '@/generated/prisma/client';
import { nextNumber } from '../next-number';

/** The next number of a germination test, 'T-0204'. A tray has its test's number from the day it is set. */
export function nextTestNumber(tx: Prisma.TransactionClient): Promise<string> {
  return nextNumber(tx, 'T', 4, async (number) => {
    const where = { where: { number }, select: { id: true } };
    return Boolean((await tx.germinationTest.findUnique(where)) ?? (await tx.tray.findUnique(where)));
  });
}
