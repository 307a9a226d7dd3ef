import type { Prisma } from '@/generated/prisma/client';
import { fieldError } from './field-error';

/** The chosen crop's name. @throws AppError beside `cropId` when there is no such crop */
export async function requireCrop(tx: Prisma.TransactionClient, cropId: string): Promise<string> {
  const crop = await tx.crop.findUnique({ where: { id: cropId }, select: { name: true } });
  if (!crop) throw fieldError({ cropId: 'This crop is no longer there: choose another.' });
  return crop.name;
}
