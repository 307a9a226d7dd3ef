import type { Prisma } from '@/generated/prisma/client';
import { fieldError } from './field-error';

interface ChosenConstants {
  longevityConstantsId?: string;
  constantsBorrowed: boolean;
  borrowedBecause?: string;
}

/**
 * Checks the longevity constants chosen for a crop; constants of another species need their reason.
 *
 * @returns what to store: without constants nothing is borrowed
 * @throws AppError beside the field
 */
export async function requireConstants(tx: Prisma.TransactionClient, input: ChosenConstants) {
  if (!input.longevityConstantsId) {
    return { longevityConstantsId: null, constantsBorrowed: true, borrowedBecause: null, constants: null };
  }
  const constants = await tx.longevityConstants.findUnique({
    where: { id: input.longevityConstantsId },
    select: { name: true },
  });
  if (!constants) throw fieldError({ longevityConstantsId: 'These constants are no longer there: choose others.' });
  if (input.constantsBorrowed && !input.borrowedBecause) {
    throw fieldError({ borrowedBecause: 'Say why these constants stand in, for example: same genus.' });
  }
  return {
    longevityConstantsId: input.longevityConstantsId,
    constantsBorrowed: input.constantsBorrowed,
    borrowedBecause: input.constantsBorrowed ? (input.borrowedBecause ?? null) : null,
    constants: constants.name,
  };
}
