import type { Prisma } from '@/generated/prisma/client';
import { fieldError } from './field-error';

/** The day on which a test of seed began, and the field in which it was typed. */
export interface TestBegan {
  on: string;
  field: string;
}

/**
 * The lot that was tested.
 *
 * @throws AppError beside `lot` when there is none of that number, beside the day when the seed was not harvested yet
 */
export async function requireLotToTest(tx: Prisma.TransactionClient, number: string, began: TestBegan) {
  const lot = await tx.lot.findUnique({
    where: { number },
    select: {
      id: true,
      number: true,
      harvestedOn: true,
      thousandSeedWeightG: true,
      accession: { select: { cropId: true } },
    },
  });
  if (!lot) throw noSuchLot(number);
  refuseBeforeHarvest(lot, began);
  return lot;
}

export const noSuchLot = (number: string) => fieldError({ lot: `There is no lot ${number} in the collection.` });

export function refuseBeforeHarvest(lot: { number: string; harvestedOn: string }, { on, field }: TestBegan): void {
  if (on >= lot.harvestedOn) return;
  throw fieldError({
    [field]: `Lot ${lot.number} was harvested on ${lot.harvestedOn}: it cannot be tested before that.`,
  });
}
