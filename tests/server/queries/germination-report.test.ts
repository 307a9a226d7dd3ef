import { parse } from 'csv-parse/sync';
import { beforeEach, describe, expect, it } from 'vitest';
import { germinationReportQuery } from '@/lib/schemas/germination-report-query';
import { recordMoistureTest } from '@/lib/server/commands/record-moisture-test';
import { recordViabilityTest } from '@/lib/server/commands/record-viability-test';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { connections } from '@/lib/server/database/connections';
import { getGerminationReport } from '@/lib/server/queries/germination-report';
import { germinationReportFile } from '@/lib/server/queries/germination-report-file';
import { PAGE_SIZE } from '@/lib/server/queries/list-page';
import { againstBefore, REPORT_PIECE } from '@/lib/server/queries/report-tests';
import { createLotWithPacket, recordTest } from '@/tests/support/create-tested-lot';
import { insertTray } from '@/tests/support/insert-tray';
import { ledgerOf } from '@/tests/support/ledger';
import { VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const YEAR = { from: '2026-01-01', to: '2026-12-31' };
const report = (asked: object = YEAR) => getGerminationReport(germinationReportQuery('2026-11-25').parse(asked));
const numbers = async (asked: object = YEAR) => (await report(asked)).tests.map(({ number }) => number);

let leek: Awaited<ReturnType<typeof createLotWithPacket>>;
let bean: Awaited<ReturnType<typeof createLotWithPacket>>;

beforeEach(async () => {
  leek = await createLotWithPacket({ seeds: 4000 });
  bean = await createLotWithPacket({ number: 'L-2014-007', crop: 'Broad bean', accessionName: 'Old Ness Long-pod' });
});

/** A test of so many normal seedlings in each of its replicates of 50. */
const testOf = (normals: number[], overrides: object = {}) =>
  recordTest({ replicates: normals.map((normal) => ({ seeds: 50, normal })), ...overrides });
const days = (setOn: string, finishedOn: string) => ({ setOn, finishedOn });

describe('the tests of a report', () => {
  it('are those whose last count fell into the period, its first and last day included', async () => {
    await testOf([40, 41], days('2026-02-15', '2026-03-01'));
    await testOf([40, 42], days('2026-03-02', '2026-03-31'));
    await testOf([40, 43], days('2026-02-14', '2026-02-28'));
    await testOf([40, 44], days('2026-03-20', '2026-04-01'));
    expect(await numbers({ from: '2026-03-01', to: '2026-03-31' })).toEqual(['T-0001', 'T-0002']);
  });

  it('stand by crop, variety, lot and day; a correction stands for what it corrects', async () => {
    const wrong = await testOf([40, 41], days('2026-05-01', '2026-05-15'));
    await testOf([30, 31], { lot: bean.number, ...days('2026-06-01', '2026-06-15') });
    await testOf([40, 41], days('2026-03-01', '2026-03-15'));
    await testOf([39, 41], {
      ...days('2026-05-01', '2026-05-16'),
      ...{ correctsId: wrong.id, correctionReason: 'one was abnormal' },
    });
    expect(await numbers()).toEqual(['T-0002', 'T-0003', 'T-0004']);
    // Corrected into another year, it is in that year's report alone.
    const again = await testOf([38, 41], days('2026-07-01', '2026-07-15'));
    await testOf([38, 41], {
      ...days('2025-07-01', '2025-07-15'),
      ...{ correctsId: again.id, correctionReason: 'the wrong year' },
    });
    expect(await numbers()).not.toContain(again.number);
    expect(await numbers({ from: '2025-01-01', to: '2025-12-31' })).toEqual(['T-0006']);
  });

  it('carry their share with its interval, and whether the replicates agree', async () => {
    await testOf([45, 45], days('2026-03-01', '2026-03-15'));
    await testOf([49, 20], days('2026-04-01', '2026-04-15'));
    await testOf([45], days('2026-05-01', '2026-05-15'));
    const [agrees, differs, alone] = (await report()).tests;
    // R prop.test(90, 100, correct = FALSE): 0.8256 to 0.9448
    expect(agrees?.interval.lower).toBeCloseTo(0.8256, 4);
    expect(agrees?.interval.upper).toBeCloseTo(0.9448, 4);
    expect(agrees?.agreement).toMatchObject({ range: 0, within: true });
    expect(differs?.agreement).toMatchObject({ range: 58, within: false });
    expect(alone?.agreement).toBeNull();
    expect((await report()).sums).toMatchObject({ tests: 3, comparable: 2, outside: 1 });
  });

  it('are compared with the lot’s test before, wherever that lies, and know the one after', async () => {
    await testOf([48, 48], days('2025-03-01', '2025-03-15'));
    await testOf([30, 31], days('2026-03-01', '2026-03-15'));
    await testOf([31, 31], { lot: bean.number, ...days('2026-03-01', '2026-03-14') });
    await testOf([29, 32], days('2026-04-01', '2026-04-15'));
    const [ofBean, first, second] = (await report()).tests;
    expect(ofBean).toMatchObject({ before: null, testedSince: null });
    expect(first).toMatchObject({
      before: { number: 'T-0001', seeds: 100, normal: 96 },
      testedSince: 'T-0004',
    });
    expect(second).toMatchObject({
      before: { number: 'T-0002' },
      testedSince: null,
    });
    expect([first, second, ofBean].map((test) => test && againstBefore(test)?.compatible)).toEqual([
      false,
      true,
      undefined,
    ]);
    expect(second?.judged?.action).toMatch(/regrow|test-first|leave/);
  });

  it('are paged on screen, whole when they are to be printed, and summed up over all pages', async () => {
    for (let test = 0; test <= PAGE_SIZE; test += 1) {
      const month = String((test % 9) + 1).padStart(2, '0');
      const year = 2021 + Math.floor(test / 9);
      await testOf([40, 41], days(`${year}-${month}-01`, `${year}-${month}-15`));
    }
    const asked = { from: '2021-01-01', to: '2026-12-31' };
    const [first, last] = [await report(asked), await report({ ...asked, page: 99 })];
    expect([first.tests.length, first.pages, first.sums.tests]).toEqual([PAGE_SIZE, 2, PAGE_SIZE + 1]);
    expect([last.tests.length, last.page, last.sums.tests]).toEqual([1, 2, PAGE_SIZE + 1]);
    expect(first.tests.map(({ number }) => number)).not.toContain(last.tests[0]?.number);
    const whole = await report({ ...asked, whole: 'yes' });
    expect([whole.tests.length, whole.pages]).toEqual([PAGE_SIZE + 1, 1]);
  });

  it('goes on over thousands without losing, repeating or mixing up a test', async () => {
    const tests = REPORT_PIECE * 2 + 1;
    const { bulk } = connections();
    bulk.transaction(() => {
      const test = bulk.prepare(
        `INSERT INTO "GerminationTest" ("id", "number", "lotId", "setOn", "finishedOn", "byId") VALUES (?, ?, ?, ?, ?, 'v')`,
      );
      const dish = bulk.prepare('INSERT INTO "Replicate" VALUES (?, ?, 50, ?, 0, 0, 0, ?)');
      for (let index = 0; index < tests; index += 1) {
        const id = `g${String(index).padStart(6, '0')}`;
        const lotId = index % 2 === 0 ? leek.lotId : bean.lotId;
        test.run(id, `X-${index}`, lotId, '2026-03-01', '2026-03-15');
        for (const position of [1, 2]) dish.run(id, position, index % 51, 50 - (index % 51));
      }
    })();
    const whole = await report({ ...YEAR, whole: 'yes' });
    expect(new Set(whole.tests.map(({ id }) => id)).size).toBe(tests);
    for (const test of whole.tests) expect(test.normal).toBe(2 * (Number(test.number.slice(2)) % 51));
    // Of each lot the one before is the one written down before, over the edge of a piece too.
    for (const test of whole.tests) {
      const before = Number(test.number.slice(2)) - 2;
      expect(test.before?.number).toBe(before < 0 ? undefined : `X-${before}`);
    }
    expect(whole.byCrop.map(({ cropName, tests: count }) => [cropName, count])).toEqual([
      ['Broad bean', REPORT_PIECE],
      ['Leek', REPORT_PIECE + 1],
    ]);
    expect(whole.sums.tests).toBe(tests);
  }, 20_000);
});

describe('sums of a report', () => {
  it('are told by crop, by method, and for lots that are likelier below their line than above', async () => {
    await testOf([40, 41], { method: 'top of paper, 20 °C', ...days('2026-03-01', '2026-03-15') });
    await testOf([40, 42], { method: 'top of paper, 20 °C', ...days('2026-04-01', '2026-04-15') });
    await testOf([10, 12], { lot: bean.number, ...days('2026-04-01', '2026-04-15') });
    const set = connections().writer.lotJudgement;
    await set.update({ where: { lotId: bean.lotId }, data: { chanceBelow: 0.51 } });
    await set.update({ where: { lotId: leek.lotId }, data: { chanceBelow: 0.5 } });
    const { sums, byCrop, byMethod } = await report();
    expect(sums).toMatchObject({ tests: 3, lots: 2, seeds: 300, normal: 185, lotsBelow: 1 });
    expect(byCrop).toMatchObject([
      { cropName: 'Broad bean', tests: 1, lots: 1, seeds: 100, normal: 22, lotsBelow: 1 },
      { cropName: 'Leek', tests: 2, lots: 1, seeds: 200, normal: 163, lotsBelow: 0 },
    ]);
    expect(byMethod).toEqual([
      { method: 'top of paper, 20 °C', tests: 2 },
      { method: null, tests: 1 },
    ]);
  });

  it('count trays given up and other viability tests of the period, those corrected once', async () => {
    const stain = (overrides: object) =>
      recordViabilityTest(VOLUNTEER, {
        ...{ lot: leek.number, kind: 'tetrazolium', testedOn: '2026-03-01' },
        ...{ stainedNormally: '20', unstained: '5', ...overrides },
      });
    await stain({});
    await stain({ testedOn: '2025-12-31' });
    await stain({ kind: 'cut', firm: '9', empty: '1' });
    const { id } = await connections().writer.viabilityTest.findUniqueOrThrow({ where: { number: 'V-0001' } });
    await stain({ correctsId: id, correctionReason: 'miscounted', unstained: '6' });
    const { bulk } = connections();
    const given = (closedOn: string) => {
      const tray = insertTray(bulk, { lotNumber: leek.number, takesSeed: false });
      bulk.prepare(`UPDATE "Tray" SET "status" = 'given-up', "closedOn" = ? WHERE "id" = ?`).run(closedOn, tray.id);
    };
    given('2026-12-31');
    given('2027-01-01');
    const found = await report();
    expect(found.traysGivenUp).toBe(1);
    expect(found.viabilityTests).toEqual([
      { kind: 'tetrazolium', tests: 1, seeds: 26 },
      { kind: 'cut', tests: 1, seeds: 10 },
    ]);
  });
});

describe('seeds used up', () => {
  const ledgerSum = (from: string, to: string) =>
    connections()
      .bulk.prepare<[string, string], number>(
        `SELECT COALESCE(SUM(-"seeds"), 0) FROM "Movement" m WHERE "reason" = 'test' AND "on" BETWEEN ? AND ?
           AND "id" NOT IN (SELECT "correctsId" FROM "Movement" WHERE "correctsId" IS NOT NULL)`,
      )
      .pluck()
      .get(from, to);

  async function everyKind() {
    const { packetId } = leek;
    const fromPacket = { packetId, takeSeed: 'on' };
    // In the period, seed taken out in it; before it; and not at all.
    await testOf([40, 41], { ...fromPacket, ...days('2026-03-01', '2026-03-15') });
    await testOf([40, 42], { ...fromPacket, ...days('2025-12-20', '2026-01-05') });
    await testOf([40, 43, 44], days('2026-04-01', '2026-04-15'));
    // 70 taken out, 50 set.
    await takeSeedOut(VOLUNTEER, { packetId, amount: '70', unit: 'seeds', reason: 'test', on: '2026-05-01' });
    const withdrawalId = ledgerOf(packetId).at(-1)?.id;
    const named = await testOf([40], { withdrawalId, ...days('2026-05-01', '2026-05-15') });
    // Corrected: its seed went out the first time.
    const correction = { correctsId: named.id, correctionReason: 'one fewer' };
    await testOf([39], { ...correction, ...days('2026-05-01', '2026-05-15') });
    // Finished after the period; nobody's; taken back; a moisture test; a cut.
    await testOf([41], { ...fromPacket, ...days('2026-10-25', '2026-11-05') });
    await takeSeedOut(VOLUNTEER, { packetId, amount: '30', unit: 'seeds', reason: 'test', on: '2026-06-01' });
    await takeSeedOut(VOLUNTEER, { packetId, amount: '25', unit: 'seeds', reason: 'test', on: '2026-06-02' });
    await undoMovement(VOLUNTEER, { movementId: ledgerOf(packetId).at(-1)?.id });
    await recordMoistureTest(VOLUNTEER, {
      ...{ lot: leek.number, packetId, testedOn: '2026-06-03', method: 'meter', moisturePercent: '7' },
      ...{ takeSeed: 'on', amount: '15', unit: 'seeds' },
    });
    await recordViabilityTest(VOLUNTEER, {
      ...{ lot: leek.number, kind: 'cut', testedOn: '2026-06-04', firm: '9', empty: '1', ...fromPacket },
    });
    // A tray under way, and one that was given up.
    const { bulk } = connections();
    insertTray(bulk, { lotNumber: leek.number, setOn: '2026-10-20', dishes: [50, 50] });
    const given = insertTray(bulk, { lotNumber: leek.number, setOn: '2026-09-01', dishes: [20] });
    bulk.prepare(`UPDATE "Tray" SET "status" = 'given-up', "closedOn" = '2026-09-10' WHERE "id" = ?`).run(given.id);
  }

  it('by the ledger are all its lines for tests in the period, each told once by what it went into', async () => {
    await everyKind();
    const period = { from: '2026-01-01', to: '2026-10-31' };
    const { seeds } = await report(period);
    expect(seeds.ledger).toEqual([
      { use: 'these tests', lines: 2, seeds: 170 },
      { use: 'other germination tests', lines: 2, seeds: 150 },
      { use: 'trays given up', lines: 1, seeds: 20 },
      { use: 'viability tests', lines: 1, seeds: 10 },
      { use: 'moisture tests', lines: 1, seeds: 15 },
      { use: 'no test named', lines: 1, seeds: 30 },
    ]);
    expect(seeds.ledgerTotal).toBe(395);
    expect(seeds.ledgerTotal).toBe(ledgerSum(period.from, period.to));
  });

  it('by the tests equal what the ledger took out for them, but for what is named', async () => {
    await everyKind();
    const { seeds } = await report({ from: '2026-01-01', to: '2026-10-31' });
    expect(seeds).toMatchObject({
      ...{ set: 400, takenInPeriod: 170, takenOutside: 100 },
      ...{ notInLedger: { tests: 1, seeds: 150 }, beyondSet: 20 },
    });
    expect(seeds.takenInPeriod + seeds.takenOutside + seeds.notInLedger.seeds - seeds.beyondSet).toBe(seeds.set);
    expect(seeds.ledger[0]?.seeds).toBe(seeds.takenInPeriod);
  });

  it('of a tray that was closed are those that were taken out when it was set', async () => {
    const { bulk } = connections();
    const tray = insertTray(bulk, { lotNumber: leek.number, setOn: '2026-03-01', dishes: [50, 50] });
    bulk
      .prepare(
        `INSERT INTO "GerminationTest" ("id", "number", "lotId", "setOn", "finishedOn", "byId", "trayId")
         VALUES ('g', ?, ?, '2026-03-01', '2026-03-15', 'v', ?)`,
      )
      .run(tray.number, tray.lotId, tray.id);
    bulk.exec(`INSERT INTO "Replicate" VALUES ('g', 1, 50, 38, 2, 4, 4, 2), ('g', 2, 50, 40, 0, 2, 2, 6)`);
    const { seeds, tests } = await report();
    expect(seeds).toMatchObject({ set: 100, takenInPeriod: 100, notInLedger: { tests: 0 }, beyondSet: 0 });
    expect(tests[0]?.takenOut).toEqual({ seeds: 100, on: '2026-03-01' });
  });

  it('are nothing where nothing was tested', async () => {
    const { seeds, sums, tests } = await report({ from: '1990-01-01', to: '1990-12-31' });
    expect([tests, sums.tests, seeds.set, seeds.ledger, seeds.ledgerTotal]).toEqual([[], 0, 0, [], 0]);
  });
});

describe('the file of a report', () => {
  async function fileOf(period = YEAR) {
    let text = '';
    for await (const piece of germinationReportFile(period)) text += piece;
    expect(text.startsWith('\ufeff')).toBe(true);
    return parse(text, { columns: true, bom: true }) as Record<string, string>[];
  }

  it('has a line for each test with the figures of the screen', async () => {
    await testOf([48, 48], days('2025-03-01', '2025-03-15'));
    await testOf([30, 31], { packetId: leek.packetId, takeSeed: 'on', ...days('2026-03-01', '2026-03-15') });
    await testOf([31], { lot: bean.number, ...days('2026-03-01', '2026-03-14') });
    const [ofBean, ofLeek] = await fileOf();
    expect(ofLeek).toMatchObject({
      ...{ test: 'T-0002', crop: 'Leek', lot: leek.number, replicates: '2', 'seeds set': '100' },
      // R prop.test(61, 100, correct = FALSE): 0.5120 to 0.6998
      ...{ 'germination, %': '61', 'from, %': '51.2', 'to, %': '70', 'replicates agree': 'yes' },
      ...{ 'test before': 'T-0001', 'difference from before, points': '-35', 'agrees with before': 'no' },
      ...{ 'seeds taken out of the ledger': '100', 'taken out on': '2026-03-01', 'tested since': '' },
    });
    expect(ofBean).toMatchObject({ 'replicates agree': '', 'test before': '', 'seeds taken out of the ledger': '' });
  });

  it('takes a method that looks like a formula for text', async () => {
    await testOf([30, 31], { method: '=1+1, "blotters"', ...days('2026-03-01', '2026-03-15') });
    expect((await fileOf())[0]?.method).toBe(`'=1+1, "blotters"`);
  });
});
