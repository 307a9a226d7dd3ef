import { expect, it } from 'vitest';
import { connections } from '@/lib/server/database/connections';
import { countOpenWork } from '@/lib/server/queries/open-work';
import { createLotWithPacket } from '@/tests/support/create-tested-lot';
import { createTray } from '@/tests/support/create-tray';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

it('counts trays to count and to close with the tests due; a test that is under way is not due', async () => {
  for (const number of ['L-2020-001', 'L-2020-002', 'L-2020-003']) await createLotWithPacket({ number });
  connections().bulk.prepare(`UPDATE "LotJudgement" SET "testDueOn" = '2026-11-25'`).run();
  const before = await countOpenWork();
  expect(before.germination).toBe(3);
  await createTray({ lotNumber: 'L-2020-001', firstCountOn: '2026-11-25' });
  expect((await countOpenWork()).germination).toBe(3);
  const classed = [1, 2].map((dish) => ({ on: '2026-11-24', dish, found: { normal: 50 } }));
  await createTray({ lotNumber: 'L-2020-002', counts: classed });
  expect((await countOpenWork()).germination).toBe(3);
  await createTray({ lotNumber: 'L-2020-003', firstCountOn: '2026-11-26' });
  const after = await countOpenWork();
  expect(after.germination).toBe(2);
  expect(after.today - after.germination).toBe(before.today - before.germination);
});
