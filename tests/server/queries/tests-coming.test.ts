import { beforeAll, expect, it } from 'vitest';
import { connections, reader } from '@/lib/server/database/connections';
import { findTestsComing } from '@/lib/server/queries/tests-coming';
import { createLotWithPacket } from '@/tests/support/create-tested-lot';
import { createTray } from '@/tests/support/create-tray';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

const STRETCH = { from: '2026-11-26', until: '2026-12-23' };
const dueOn = (number: string, testDueOn: string) =>
  connections().bulk.prepare(`UPDATE "LotJudgement" SET "testDueOn" = ? WHERE "lotNumber" = ?`).run(testDueOn, number);

beforeAll(async () => {
  for (const number of ['L-2020-001', 'L-2020-002', 'L-2020-003', 'L-2020-004']) await createLotWithPacket({ number });
  dueOn('L-2020-001', '2026-12-23');
  dueOn('L-2020-002', '2026-11-26');
  dueOn('L-2020-003', '2026-12-24');
  dueOn('L-2020-004', '2026-12-01');
  await createTray({ lotNumber: 'L-2020-004' });
});

it('tells the tests that fall due in the stretch, by date', async () => {
  expect(await reader().lotJudgement.count()).toBe(4);
  const { rows, total } = await findTestsComing(STRETCH);
  expect(rows.map(({ lotNumber, testDueOn }) => [lotNumber, testDueOn])).toEqual([
    ['L-2020-002', '2026-11-26'],
    ['L-2020-001', '2026-12-23'],
  ]);
  expect(total).toBe(2);
});

it('leaves out a lot that is being tested', async () => {
  const numbers = (await findTestsComing(STRETCH)).rows.map(({ lotNumber }) => lotNumber);
  expect(numbers).not.toContain('L-2020-004');
});
