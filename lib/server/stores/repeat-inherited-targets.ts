import type { Prisma } from '@/generated/prisma/client';

/**
 * Stores without a target of their own repeat that of the store around them, so that lists and forms need not look for
 * it. Call after a target has changed or a store has moved.
 */
export async function repeatInheritedTargets(tx: Prisma.TransactionClient): Promise<void> {
  const stores = await tx.store.findMany({
    select: { id: true, parentId: true, inheritsTarget: true, targetTemperatureC: true, targetRelativeHumidity: true },
  });
  const byId = new Map(stores.map((store) => [store.id, store]));
  for (const store of stores) {
    if (!store.inheritsTarget) continue;
    let around = store.parentId === null ? undefined : byId.get(store.parentId);
    while (around?.inheritsTarget && around.parentId !== null) around = byId.get(around.parentId);
    if (!around) continue;
    const { targetTemperatureC, targetRelativeHumidity } = around;
    if (store.targetTemperatureC === targetTemperatureC && store.targetRelativeHumidity === targetRelativeHumidity)
      continue;
    await tx.store.update({ where: { id: store.id }, data: { targetTemperatureC, targetRelativeHumidity } });
  }
}
