import type { Prisma } from '@/generated/prisma/client';
import { fieldError } from './field-error';

export interface Place {
  id: string;
  name: string;
  targetTemperatureC: number;
  targetRelativeHumidity: number | null;
}

/**
 * Checks a store's name and the store around it. That nothing lies inside itself is writePhase's to check.
 *
 * @param ownId  of the store that is edited; null for a new one
 * @returns the store around it, or null
 * @throws AppError beside `name` when it is taken, beside `parentId` when that store is missing or no longer used
 */
export async function requirePlace(
  tx: Prisma.TransactionClient,
  input: { name: string; parentId?: string },
  ownId: string | null,
): Promise<Place | null> {
  await refuseTakenName(tx, input.name, ownId);
  return input.parentId ? requireStoreAround(tx, input.parentId) : null;
}

export async function refuseTakenName(tx: Prisma.TransactionClient, name: string, ownId: string | null): Promise<void> {
  const [same] = await tx.$queryRaw<{ id: string; name: string }[]>`
    SELECT "id", "name" FROM "Store" WHERE "name" = ${name} COLLATE NOCASE AND "id" IS NOT ${ownId} LIMIT 1`;
  if (same) throw fieldError({ name: `There is a store called ${same.name} already: choose another name.` });
}

export async function requireStoreAround(tx: Prisma.TransactionClient, parentId: string): Promise<Place> {
  const around = await tx.store.findUnique({
    where: { id: parentId },
    select: { id: true, name: true, targetTemperatureC: true, targetRelativeHumidity: true, closedOn: true },
  });
  if (!around) throw fieldError({ parentId: 'This store is no longer there: choose another.' });
  const { closedOn, ...place } = around;
  if (closedOn) throw fieldError({ parentId: `${place.name} is no longer used since ${closedOn}: choose another.` });
  return place;
}
