import { beforeAll, describe, expect, test } from 'vitest';
import { connections } from '@/lib/server/database/connections';
import { regrowingNeeds } from '@/lib/server/judging/regrowing-needs';
import { findTestsDueOrComing } from '@/lib/server/queries/germination-tests';
import { findLotsToPlan, getLotsToPlan, LOTS_SHOWN } from '@/lib/server/queries/lots-to-plan';
import { findTestsDue } from '@/lib/server/queries/today';
import { findTraysToPlan } from '@/lib/server/queries/trays-to-set';
import { createLotWithPacket, recordTest } from '../../support/create-tested-lot';
import { writeLines } from '../../support/ledger';
import { setTraysOf, trayRow } from '../../support/set-tray';
import { useTestBank } from '../../support/test-bank';

const TODAY = '2026-11-25';
useTestBank({ today: TODAY });

const LOTS = [
  ['L-2010-001', 'Kale', 'Brannasay Curled', '2010-09-15'],
  ['L-2011-001', 'Kale', 'Brannasay Curled', '2011-09-15'],
  ['L-2012-001', 'Carrot', 'Sound Long', '2012-09-15'],
  ['L-2013-001', 'Leek', 'Skerry Winter', '2013-09-15'],
  ['L-2014-001', 'Lettuce', 'Quay Butter', '2014-09-15'],
] as const;
const lots = new Map<string, Awaited<ReturnType<typeof createLotWithPacket>>>();

beforeAll(async () => {
  for (const [number, crop, accessionName, harvestedOn] of LOTS) {
    lots.set(number, await createLotWithPacket({ number, crop, accessionName, harvestedOn, seeds: 3000 }));
  }
  // Tested a few weeks ago and good: no longer due.
  await createLotWithPacket({ number: 'L-2025-009', crop: 'Kale', harvestedOn: '2025-09-15' });
  const good = { seeds: '100', normal: '97' };
  await createLotWithPacket({ number: 'L-2025-010', crop: 'Kale', harvestedOn: '2025-09-15', seeds: 120 });
  await recordTest({ lot: 'L-2025-009', setOn: '2026-10-20', finishedOn: '2026-11-01', replicates: [good, good] });
  await recordTest({ lot: 'L-2025-010', setOn: '2026-10-21', finishedOn: '2026-11-01', replicates: [good, good] });
});

const plan = (input: object = {}) => findLotsToPlan({ today: TODAY, ...input });
const numbersOf = (shown: Awaited<ReturnType<typeof plan>>) =>
  shown.groups.map(({ key, lots: of }) => [key, of.map(({ lotNumber }) => lotNumber)]);

describe('what is due', () => {
  test('stands together by temperatures and light, by crop inside, the longest due first', async () => {
    const shown = await plan();
    expect(numbersOf(shown)).toEqual([
      ['20-30', ['L-2012-001', 'L-2010-001', 'L-2011-001']],
      ['20', ['L-2013-001']],
      ['20 light', ['L-2014-001']],
    ]);
    expect([shown.total, shown.dueNow]).toEqual([5, 5]);
  });

  test('crops without a method stand last, under a name of their own', async () => {
    const database = connections().bulk;
    database.exec(
      `CREATE TEMP TABLE kept AS SELECT * FROM "GerminationMethod"; DELETE FROM "GerminationMethod" WHERE "cropId" IN (SELECT "id" FROM "Crop" WHERE "name" = 'Kale')`,
    );
    expect(numbersOf(await plan()).at(-1)).toEqual([null, ['L-2010-001', 'L-2011-001']]);
    expect((await plan({ group: '-' })).groups.map(({ key }) => key)).toEqual([null]);
    database.exec(`DELETE FROM "GerminationMethod"; INSERT INTO "GerminationMethod" SELECT * FROM kept`);
  });

  test('one group alone is shown page by page', async () => {
    const shown = await plan({ group: '20-30', page: 7 });
    expect(shown.groups.map(({ key }) => key)).toEqual(['20-30']);
    expect([shown.page, shown.pages]).toEqual([1, 1]);
    expect(LOTS_SHOWN).toBeGreaterThan(2);
    expect((await plan({ group: 'none such' })).groups).toEqual([]);
  });

  test('each lot comes with its forecast, why it is due, and the test proposed for it', async () => {
    const lot = (await plan()).groups[0]?.lots.find(({ lotNumber }) => lotNumber === 'L-2010-001');
    expect(lot).toMatchObject({
      accessionName: 'Brannasay Curled',
      seedsLeft: 3000,
      lastTestedOn: null,
      packetId: lots.get('L-2010-001')?.packetId,
      method: { temperatures: '20-30' },
      underTest: null,
      freshSeedExpected: false,
    });
    expect(lot?.reason).toMatch(/Never tested/);
    expect(lot?.viabilityMedian).toBeGreaterThan(0);
    expect(lot?.proposal.firstTest).toBe(true);
    expect(lot?.proposal.chosen?.seeds).toBeGreaterThanOrEqual(100);
  });
});

test('seed that regrowing takes is not offered to a test', async () => {
  const [lot] = await getLotsToPlan(['L-2025-009'], TODAY);
  const lotId = (await connections().reader.lot.findUniqueOrThrow({ where: { number: 'L-2025-009' } })).id;
  const both = regrowingNeeds(connections().rows, [lotId], TODAY).get(lotId) ?? 0;
  expect(lot?.seedsNeeded).toBeGreaterThan(0);
  expect(lot?.seedsNeeded).toBeLessThan(both);
  expect(lot?.proposal.seedsToSpare).toBe(Math.min(500, 1000 - (lot?.seedsNeeded ?? 0)));
  const [small] = await getLotsToPlan(['L-2025-010'], TODAY);
  expect(small?.seedsNeeded).toBeGreaterThan(60);
  expect(small?.proposal.seedsToSpare).toBe(120 - (small?.seedsNeeded ?? 0));
  // Tested well a month ago: a small test is enough.
  expect(lot?.proposal).toMatchObject({ standing: 'far-above', enough: true, firstTest: false });
  expect(lot?.proposal.chosen?.seeds).toBeLessThanOrEqual(60);
});

test('lots are found by number, due or not, in the order asked; unknown ones are left out', async () => {
  const found = await getLotsToPlan(['L-2025-009', 'L-1999-001', 'L-2010-001', 'L-2025-009'], TODAY);
  expect(found.map(({ lotNumber, testDueOn }) => [lotNumber, testDueOn !== null && testDueOn <= TODAY])).toEqual([
    ['L-2025-009', false],
    ['L-2010-001', true],
  ]);
  expect(await getLotsToPlan([], TODAY)).toEqual([]);
});

describe('what a tray can be set from', () => {
  test('packets with seed, the one proposed first, and seed that was taken out before', async () => {
    const { packetId } = lots.get('L-2011-001') ?? { packetId: '' };
    writeLines({ id: 'taken-before', packetId, on: '2026-11-17', reason: 'test', seeds: -120 });
    const [tray] = await findTraysToPlan(['L-2011-001'], TODAY);
    expect(tray?.packets).toMatchObject([{ id: packetId, seeds: 2880, role: 'active' }]);
    expect(tray?.takenOut).toMatchObject([{ id: 'taken-before', seeds: 120, on: '2026-11-17' }]);
    expect(tray?.crop.methods.length).toBeGreaterThan(0);
  });

  test('once a tray has named it, it is offered no more, and the lot is under test', async () => {
    await setTraysOf([trayRow({ lot: 'L-2011-001', seedFrom: 'taken:taken-before' })]);
    const [tray] = await findTraysToPlan(['L-2011-001'], TODAY);
    expect(tray?.takenOut).toEqual([]);
    expect(tray?.underTest).toEqual({ number: 'T-0003', setOn: '2026-11-18' });
    // It is not shown as due while its test is under way: neither here, nor among the tests due, nor on Today.
    expect((await plan()).groups.flatMap((group) => group.lots.map(({ lotNumber }) => lotNumber))).not.toContain(
      'L-2011-001',
    );
    const due = await findTestsDueOrComing({ today: TODAY });
    expect([due.total, due.dueNow, (await findTestsDue()).total]).toEqual([4, 4, 4]);
    expect(due.rows.map(({ lotNumber }) => lotNumber)).not.toContain('L-2011-001');
  });
});
