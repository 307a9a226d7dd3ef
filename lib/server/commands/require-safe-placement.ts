import type { Prisma } from '@/generated/prisma/client';
import { freezingWarning } from '@/lib/domain/longevity/equation-limits';
import { fieldError } from './field-error';

/**
 * Checks where a packet is to lie: the store exists, and moist seed is not frozen unawares.
 *
 * @param input.storeAnyway  ticked by somebody who has read the warning
 * @returns the store's name
 * @throws AppError beside `storeId`, or beside `moisturePercent` with word to tick `storeAnyway`
 */
export async function requireSafePlacement(
  tx: Prisma.TransactionClient,
  input: { storeId: string; moisturePercent?: number; storeAnyway: boolean },
): Promise<string> {
  const store = await tx.store.findUnique({
    where: { id: input.storeId },
    select: { name: true, targetTemperatureC: true },
  });
  if (!store) throw fieldError({ storeId: 'This store is no longer there: choose another.' });
  if (input.moisturePercent !== undefined && !input.storeAnyway) {
    const warning = freezingWarning({
      moisturePercent: input.moisturePercent,
      temperatureC: store.targetTemperatureC,
    });
    if (warning) {
      throw fieldError({
        moisturePercent: warning,
        storeAnyway: `${store.name} is a freezer. Tick this only if you know that this seed bears it.`,
      });
    }
  }
  return store.name;
}
