import { describe, expect, it } from 'vitest';
import { readFindings } from '@/app/(bank)/germination/viability/_parts/read-findings';
import { recordViabilityTest } from '@/lib/server/commands/record-viability-test';
import { connections, reader } from '@/lib/server/database/connections';
import { findTraysOfLot, getTrayToExamine } from '@/lib/server/queries/lot-for-viability';
import { getViabilityTest, type ViabilityTestDetail } from '@/lib/server/queries/viability-test-detail';
import {
  findViabilityTests,
  findViabilityTestsOfLot,
  VIABILITY_TESTS_PER_PAGE,
} from '@/lib/server/queries/viability-tests';
import { createLotWithPacket, recordTest } from '@/tests/support/create-tested-lot';
import { createTray } from '@/tests/support/create-tray';
import { VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const TODAY = '2026-11-25';
const LOT = 'L-2020-001';
const record = (overrides: object = {}) =>
  recordViabilityTest(VOLUNTEER, {
    ...{ lot: LOT, kind: 'tetrazolium', testedOn: '2026-11-20' },
    ...{ stainedNormally: '45', stainedAbnormally: '3', unstained: '2' },
    ...overrides,
  });
const detail = async (number: string): Promise<ViabilityTestDetail> => {
  const found = await getViabilityTest(number);
  if (!found) throw new Error(`${number} is not there`);
  return found;
};
const idOf = async (number: string) => (await reader().viabilityTest.findUniqueOrThrow({ where: { number } })).id;

describe('lists of viability tests', () => {
  it('go from the newest day back; those corrected stay, and say by what', async () => {
    await createLotWithPacket();
    await record();
    await record({ testedOn: '2026-11-22', kind: 'cut', firm: '38', empty: '12' });
    await record({ correctsId: await idOf('V-0001'), correctionReason: 'miscounted', unstained: '4' });
    const { rows, total } = await findViabilityTests({ page: 1 });
    expect(total).toBe(3);
    expect(rows.map((row) => [row.number, row.correctedByNumber, row.result.seeds])).toEqual([
      ['V-0002', null, 50],
      ['V-0003', null, 52],
      ['V-0001', 'V-0003', 50],
    ]);
    expect(rows[0]).toMatchObject({ cropName: 'Leek', lotNumber: LOT, kind: 'cut', trayNumber: null });
    // The lot's own list leaves out what no longer counts, and other lots.
    const lot = await reader().lot.findUniqueOrThrow({ where: { number: LOT } });
    await createLotWithPacket({ number: 'L-2020-002' });
    await record({ lot: 'L-2020-002' });
    expect((await findViabilityTestsOfLot(lot.id)).map(({ number }) => number)).toEqual(['V-0002', 'V-0003']);
  });

  it('are paged, and a page past the end is the last one', async () => {
    await createLotWithPacket();
    for (let more = 0; more <= VIABILITY_TESTS_PER_PAGE; more += 1) await record({ unstained: String(more) });
    const first = await findViabilityTests({ page: 1 });
    const last = await findViabilityTests({ page: 99 });
    expect([first.rows.length, first.pages]).toEqual([VIABILITY_TESTS_PER_PAGE, 2]);
    expect([last.rows.length, last.page]).toEqual([1, 2]);
  });
});

describe('one viability test', () => {
  it('knows what the ledger took out, also when it is a correction', async () => {
    const { packetId } = await createLotWithPacket();
    await record({ packetId, takeSeed: 'on' });
    await record({ packetId, correctsId: await idOf('V-0001'), correctionReason: 'miscounted', unstained: '1' });
    expect(await detail('V-0002')).toMatchObject({
      takenOut: { on: '2026-11-20', seeds: 50 },
      versions: [{ number: 'V-0001' }, { number: 'V-0002' }],
      correctedByNumber: null,
    });
    expect((await detail('V-0001')).correctedByNumber).toBe('V-0002');
    expect((await detail('V-0002')).history[0]?.summary).toContain('Corrected V-0001 as V-0002');
    expect(await getViabilityTest('V-9999')).toBeNull();
  });

  it('is held against the germination test nearest in time, never one that was corrected or half a year away', async () => {
    await createLotWithPacket();
    await recordTest({ setOn: '2026-05-01', finishedOn: '2026-05-15' });
    await record();
    expect((await detail('V-0001')).germination).toBeNull();
    await recordTest({ setOn: '2026-07-01', finishedOn: '2026-07-15' });
    const near = await recordTest({ setOn: '2026-11-01', finishedOn: '2026-11-15' });
    expect((await detail('V-0001')).germination).toMatchObject({ number: 'T-0003', seeds: 100, normal: 81 });
    await recordTest({
      ...{ correctsId: near.id, correctionReason: 'the wrong jar', setOn: '2026-06-01', finishedOn: '2026-06-15' },
    });
    expect((await detail('V-0001')).germination?.number).toBe('T-0002');
  });
});

describe('what a viability test says', () => {
  it('finds much alive that does not germinate: dormant', async () => {
    await createLotWithPacket();
    await recordTest({
      ...{ setOn: '2026-11-01', finishedOn: '2026-11-15' },
      replicates: [
        { seeds: 50, normal: 20 },
        { seeds: 50, normal: 22 },
      ],
    });
    await record();
    const findings = readFindings(await detail('V-0001'), TODAY);
    expect(findings.dormant?.verdict).toBe('shown');
    expect(findings.advice.map(({ reason }) => reason)).toContain('dormant');
  });

  it('is not held against the forecast of today once it is half a year old', async () => {
    await createLotWithPacket();
    await record({ testedOn: '2026-05-29' });
    await record({ testedOn: '2026-05-28' });
    const [fresh, old] = [await detail('V-0001'), await detail('V-0002')];
    expect(fresh.lot.forecast).not.toBeNull();
    expect(readFindings(fresh, TODAY)).toMatchObject({ old: false, forecast: expect.any(String) });
    expect(readFindings(old, TODAY)).toMatchObject({ old: true, forecast: null });
  });

  it('gives no advice once it was corrected', async () => {
    await createLotWithPacket();
    await record({ stainedNormally: '1', unstained: '10' });
    await record({ correctsId: await idOf('V-0001'), correctionReason: 'miscounted' });
    expect(readFindings(await detail('V-0001'), TODAY).advice).toEqual([]);
  });
});

describe('seed left over in a tray', () => {
  async function closedTray() {
    const tray = await createTray();
    const { bulk } = connections();
    bulk
      .prepare(
        `INSERT INTO "GerminationTest" ("id", "number", "lotId", "setOn", "finishedOn", "byId", "trayId")
         VALUES ('g', ?, ?, '2026-11-18', '2026-11-24', 'v', ?)`,
      )
      .run(tray.number, tray.lotId, tray.id);
    bulk.exec(`INSERT INTO "Replicate" VALUES ('g', 1, 50, 38, 2, 4, 4, 2), ('g', 2, 50, 40, 0, 2, 2, 6)`);
    return tray;
  }
  const close = () => connections().bulk.exec(`UPDATE "Tray" SET "status" = 'closed', "closedOn" = '2026-11-24'`);

  it('has no share of the lot before the tray is closed, and one with its seedlings after', async () => {
    const tray = await closedTray();
    await record({ trayId: tray.id, stainedNormally: '5', stainedAbnormally: '', unstained: '1' });
    expect(readFindings(await detail('V-0001'), TODAY)).toMatchObject({ together: 'not-closed', forecast: null });
    close();
    // 78 of 100 normal, 12 hard or fresh, of which 6 examined and 5 alive: 78 + 10 alive in all
    expect(readFindings(await detail('V-0001'), TODAY).together).toMatchObject({
      ...{ testNumber: tray.number, looked: 6, alive: 5, of: ['V-0001'] },
      result: { proportion: 0.88, carriedOver: 0.06 },
    });
  });

  it('is put together from all tests of its kind, those corrected left out', async () => {
    const tray = await closedTray();
    close();
    const of = (alive: string, dead: string, overrides: object = {}) =>
      record({ trayId: tray.id, stainedNormally: alive, stainedAbnormally: '', unstained: dead, ...overrides });
    await of('5', '1');
    await of('4', '2', { correctsId: await idOf('V-0001'), correctionReason: 'one more was pale' });
    await of('2', '0');
    await of('', '', { kind: 'cut', firm: '1' });
    const findings = readFindings(await detail('V-0002'), TODAY);
    expect(findings.together).toMatchObject({
      looked: 8,
      alive: 6,
      of: ['V-0002', 'V-0003'],
      result: { proportion: 0.87 },
    });
    expect(findings.advice.map(({ reason }) => reason)).toContain('class-again');
    // The cut says at most so much: it stays by itself.
    expect(readFindings(await detail('V-0004'), TODAY)).toMatchObject({
      together: { looked: 1, alive: 1 },
      forecast: 'allows',
    });
  });

  it('that no longer fits a germination test corrected since is said, not reckoned with', async () => {
    const tray = await closedTray();
    close();
    await record({ trayId: tray.id, stainedNormally: '12', stainedAbnormally: '', unstained: '' });
    connections().bulk.exec(
      `INSERT INTO "GerminationTest" ("id", "number", "lotId", "setOn", "finishedOn", "byId", "correctsId")
         SELECT 'g2', 'T-0900', "lotId", "setOn", "finishedOn", "byId", "id" FROM "GerminationTest" WHERE "id" = 'g';
       INSERT INTO "Replicate" VALUES ('g2', 1, 100, 97, 0, 3, 0, 0)`,
    );
    expect(readFindings(await detail('V-0001'), TODAY).together).toBe('does-not-fit');
  });

  it('is offered by the number of its tray; trays that were given up are not', async () => {
    const tray = await createTray({ counts: [{ on: '2026-11-23', dish: 1, found: { normal: 40, fresh: 3 } }] });
    expect(await findTraysOfLot(LOT)).toEqual([{ number: tray.number, setOn: '2026-11-18', status: 'open' }]);
    expect(await getTrayToExamine(tray.number)).toMatchObject({ lotNumber: LOT, hardOrFresh: 3, unclassed: 57 });
    expect(await getTrayToExamine('T-9999')).toBeNull();
    connections().bulk.exec(`UPDATE "Tray" SET "status" = 'given-up'`);
    expect(await findTraysOfLot(LOT)).toEqual([]);
  });
});
