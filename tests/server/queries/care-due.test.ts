import { expect, it } from 'vitest';
import { recordPacketCare } from '@/lib/server/commands/record-packet-care';
import { repackPacket } from '@/lib/server/commands/repack-packet';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { findCareDue, findCareDuePage } from '@/lib/server/queries/care-due';
import { findStock } from '@/lib/server/queries/stock';
import { makeLot } from '@/tests/support/create-lot';
import { VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const care = (packetId: string, what: string, on: string, overrides: Record<string, unknown> = {}) =>
  recordPacketCare(VOLUNTEER, { packetId, what, on, ...overrides });
const gel = (packetId: string, on: string, changeDueOn: string) =>
  care(packetId, 'desiccant', on, { desiccant: 'silica-gel', changeDueOn });

it('lists what stands open and what desiccant is due, longest waiting first; not what was seen to, emptied or is due later', async () => {
  const lots = [];
  for (let index = 0; index < 7; index += 1) lots.push(await makeLot());
  const [open, sealed, due, later, changed, emptied, paper] = lots.map(({ packetId }) => packetId) as string[] &
    [string, string, string, string, string, string, string];
  await care(open, 'opened', '2026-11-20');
  await care(sealed, 'opened', '2026-11-20');
  await care(sealed, 'sealed', '2026-11-20');
  await gel(due, '2026-10-10', '2026-11-15');
  await gel(later, '2026-10-10', '2026-11-26');
  await gel(changed, '2026-10-10', '2026-11-01');
  await gel(changed, '2026-11-02', '2027-05-02');
  await care(emptied, 'opened', '2026-11-20');
  await takeSeedOut(VOLUNTEER, { packetId: emptied, amount: '1000', unit: 'seeds', reason: 'sowing' });
  await care(paper, 'opened', '2026-11-20');
  await repackPacket(VOLUNTEER, { packetId: paper, container: 'paper-envelope' });

  const { rows, total } = await findCareDue();
  expect(rows.map(({ packetNumber, what, on }) => [packetNumber, what, on])).toEqual([
    ['P-00003', 'desiccant', '2026-11-15'],
    ['P-00001', 'seal', '2026-11-20'],
  ]);
  expect(total).toBe(2);
  expect(rows[0]).toMatchObject({ accessionName: 'Skerry Winter', cropName: 'Leek', lotNumber: 'L-2026-003' });
});

it("agrees with what each packet's own page says", async () => {
  const lots = [await makeLot(), await makeLot(), await makeLot()];
  const [both, none, reopened] = lots.map(({ packetId }) => packetId) as string[] & [string, string, string];
  await gel(both, '2026-10-10', '2026-11-15');
  await care(both, 'opened', '2026-11-21');
  await care(none, 'sealed', '2026-11-21');
  await care(reopened, 'sealed', '2026-11-21');
  await care(reopened, 'opened', '2026-11-21');
  const { rows, total } = await findCareDue(1);
  expect([rows.length, total]).toEqual([1, 3]);
  expect(await findCareDuePage(7)).toMatchObject({ rows: { length: 3 }, total: 3, page: 1, pages: 1 });
  const pages = await findStock({ lotIds: lots.map(({ lotId }) => lotId) });
  const listed = (await findCareDue()).rows;
  for (const { number, careDue } of pages) {
    const first = listed.find((row) => row.packetNumber === number && row.what === careDue?.what);
    expect(first?.on ?? null, number).toBe(careDue?.on ?? null);
  }
});
