import { giveUpStockTakeSchema } from '@/lib/schemas/stock-take';
import { AppError } from '../app-error';
import { mayActAs } from '../auth/roles';
import { defineCommand } from './command';
import { openStockTake } from './stock-take-in-hand';

/** Ends a stock-take without a word in the ledger. Its lines stay to be read. */
export const giveUpStockTake = defineCommand({
  name: 'give-up-stock-take',
  role: 'volunteer',
  schema: giveUpStockTakeSchema,
  async run({ tx, person, today, audit }, input) {
    const take = await openStockTake(tx, input.stockTakeId);
    if (take.byId !== person.id && !mayActAs(person, 'steward')) {
      throw new AppError('not-allowed', `Only who started ${take.number} or a steward may give it up.`);
    }
    await tx.stockTake.update({
      where: { id: take.id },
      data: { status: 'given-up', closedOn: today, version: { increment: 1 } },
    });
    await audit({
      entity: 'stock-take',
      entityId: take.id,
      summary: `Gave up stock-take ${take.number} of ${take.storeName}; nothing was changed`,
    });
    return { number: take.number };
  },
});
