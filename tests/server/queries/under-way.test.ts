import { expect, it } from 'vitest';
import { createRequest } from '@/lib/server/commands/create-request';
import { giveUpStockTake } from '@/lib/server/commands/give-up-stock-take';
import { startStockTake } from '@/lib/server/commands/start-stock-take';
import { reader } from '@/lib/server/database/connections';
import { findUnderWay } from '@/lib/server/queries/under-way';
import { makeStore } from '@/tests/support/create-store';
import { STEWARD, VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

it('lists what was begun and not ended, what has waited longest first', async () => {
  const { id, name } = await makeStore();
  const other = await makeStore();
  const request = { recipient: 'Growers of Northbie', recipientKind: 'group', askedOn: '2026-11-20' };
  await createRequest(VOLUNTEER, request);
  await startStockTake(VOLUNTEER, { storeId: id });
  const given = await startStockTake(VOLUNTEER, { storeId: other.id });
  const { id: stockTakeId } = await reader().stockTake.findUniqueOrThrow({ where: { number: given.number } });
  await giveUpStockTake(STEWARD, { stockTakeId });
  expect((await findUnderWay()).map(({ kind, about, since }) => [kind, about, since])).toEqual([
    ['request', 'Growers of Northbie', '2026-11-20'],
    ['stock-take', name, '2026-11-25'],
  ]);
});
