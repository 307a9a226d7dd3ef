import { saveStockTakeDecisionsSchema } from '@/lib/schemas/stock-take';
import { defineCommand } from './command';
import { openStockTake } from './stock-take-in-hand';
import { takeOverDecisions } from './take-over-decisions';

/** Keeps what the review has decided so far; the stock-take stays open. */
export const saveStockTakeDecisions = defineCommand({
  name: 'save-stock-take-decisions',
  role: 'steward',
  schema: saveStockTakeDecisionsSchema,
  async run({ tx, audit }, input) {
    const take = await openStockTake(tx, input.stockTakeId);
    const decided = await takeOverDecisions(tx, take.id, input.decisions);
    await audit({
      entity: 'stock-take',
      entityId: take.id,
      summary: `${take.number}: ${decided} ${decided === 1 ? 'difference' : 'differences'} decided so far`,
    });
    return { number: take.number };
  },
});
