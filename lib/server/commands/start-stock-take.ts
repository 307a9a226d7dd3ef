import { yearOf } from '@/lib/domain/calendar/calendar-date';
import { startStockTakeSchema } from '@/lib/schemas/stock-take';
import { newId } from '../new-id';
import { nextNumber } from '../next-number';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { storesInside } from './stock-take-in-hand';

/** Begins to go through a store and what stands in it. Two stock-takes never look at the same place at once. */
export const startStockTake = defineCommand({
  name: 'start-stock-take',
  role: 'volunteer',
  schema: startStockTakeSchema,
  async run({ tx, person, today, audit }, input) {
    const store = await tx.store.findUnique({ where: { id: input.storeId }, select: { name: true } });
    if (!store) throw fieldError({ storeId: 'This store is no longer there: choose another.' });
    const inside = await storesInside(tx, input.storeId);
    const open = await tx.stockTake.findMany({
      where: { status: 'open' },
      select: { number: true, storeId: true, store: { select: { name: true } } },
    });
    for (const other of open) {
      if (inside.has(other.storeId) || (await storesInside(tx, other.storeId)).has(input.storeId)) {
        throw fieldError({
          storeId: `${other.number} of ${other.store.name} is still open and looks at the same packets: go on with it, or give it up.`,
        });
      }
    }
    const id = newId();
    const number = await nextNumber(tx, `ST-${yearOf(today)}`, 2, async (taken) =>
      Boolean(await tx.stockTake.findUnique({ where: { number: taken }, select: { id: true } })),
    );
    await tx.stockTake.create({
      data: { id, number, storeId: input.storeId, startedOn: today, notes: input.notes, byId: person.id },
    });
    await audit({ entity: 'stock-take', entityId: id, summary: `Started stock-take ${number} of ${store.name}` });
    return { id, number };
  },
});
