import { describe, expect, test } from 'vitest';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { connections } from '@/lib/server/database/connections';
import { getGerminationTest } from '@/lib/server/queries/germination-test-detail';
import {
  findGerminationTests,
  findTestedCrops,
  findTestsDueOrComing,
  TESTS_PER_PAGE,
} from '@/lib/server/queries/germination-tests';
import { findLotsToTest, getLotForTesting } from '@/lib/server/queries/lots-for-testing';
import { createLotWithPacket, recordTest } from '../../support/create-tested-lot';
import { VOLUNTEER } from '../../support/people';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

const numbers = async (filter: Parameters<typeof findGerminationTests>[0] = {}) =>
  (await findGerminationTests(filter)).rows.map((row) => row.number);

async function twoCrops() {
  const leek = await createLotWithPacket();
  const bean = await createLotWithPacket({
    number: 'L-2014-007',
    crop: 'Broad bean',
    accessionName: 'Old Ness Long-pod',
  });
  await recordTest({ setOn: '2026-05-01', finishedOn: '2026-05-10' });
  await recordTest({ lot: bean.number, setOn: '2026-03-01', finishedOn: '2026-03-10' });
  await recordTest({ setOn: '2024-03-01', finishedOn: '2024-03-10' });
  return { leek, bean };
}

describe('the list of tests', () => {
  test('shows the newest first by the day they finished, not by the day they were written down', async () => {
    await twoCrops();
    expect(await numbers()).toEqual(['T-0001', 'T-0002', 'T-0003']);
  });

  test('sums the replicates of each test', async () => {
    await createLotWithPacket();
    await recordTest({
      replicates: [
        { seeds: 100, normal: 80, abnormal: 5, hard: 4, fresh: 3, dead: 8 },
        { seeds: 50, normal: 40 },
      ],
    });
    const { rows } = await findGerminationTests({});
    expect(rows).toMatchObject([{ replicateCount: 2, seeds: 150, normal: 120, alive: 127, cropName: 'Leek' }]);
  });

  test('is filtered by crop and by text in test, lot and accession', async () => {
    const { bean } = await twoCrops();
    expect(await numbers({ cropId: bean.cropId })).toEqual(['T-0002']);
    expect(await numbers({ text: 'broad ness' })).toEqual(['T-0002']);
    expect(await numbers({ text: 'L-2020' })).toEqual(['T-0001', 'T-0003']);
    expect(await numbers({ text: '%' })).toEqual([]);
    expect(await numbers({ text: 't-0003' })).toEqual(['T-0003']);
    expect(await numbers({ text: 'Skerry', cropId: bean.cropId })).toEqual([]);
    expect((await findTestedCrops()).map((crop) => crop.name)).toEqual(['Broad bean', 'Leek']);
  });

  test('is paged, and a page past the end is the last one', async () => {
    await createLotWithPacket();
    for (let day = 0; day <= TESTS_PER_PAGE; day += 1) {
      const month = String((day % 11) + 1).padStart(2, '0');
      await recordTest({
        setOn: `${2021 + Math.floor(day / 11)}-${month}-01`,
        finishedOn: `${2021 + Math.floor(day / 11)}-${month}-15`,
      });
    }
    const first = await findGerminationTests({});
    const last = await findGerminationTests({ page: 99 });
    expect([first.rows.length, first.total, first.pages]).toEqual([TESTS_PER_PAGE, TESTS_PER_PAGE + 1, 2]);
    expect([last.rows.length, last.page]).toEqual([1, 2]);
    expect(first.rows.map((row) => row.number)).not.toContain(last.rows[0]?.number);
    expect((await findGerminationTests({ page: Number.NaN })).page).toBe(1);
    expect((await findGerminationTests({ page: -3 })).page).toBe(1);
  });
});

describe('tests due', () => {
  const due = async (lotNumber: string, testDueOn: string | null) => {
    const { lotId } = await createLotWithPacket({ number: lotNumber, seeds: 900 });
    await connections().writer.lotJudgement.update({ where: { lotId }, data: { testDueOn, testDueReason: 'why' } });
  };

  test('the longest due comes first, then what falls due within sixty days', async () => {
    await due('L-1', '2026-11-25');
    await due('L-2', '2026-11-26');
    await due('L-3', '2025-01-01');
    await due('L-4', null);
    await due('L-5', '2027-01-24');
    await due('L-6', '2027-01-25');
    const found = await findTestsDueOrComing({ today: '2026-11-25' });
    expect(found.rows.map((row) => row.lotNumber)).toEqual(['L-3', 'L-1', 'L-2', 'L-5']);
    expect([found.total, found.dueNow]).toEqual([4, 2]);
    expect(found.rows[0]).toMatchObject({ reason: 'why', seedsLeft: 900, testDueOn: '2025-01-01' });
  });
});

describe('one test', () => {
  test('comes with its lot, its crop and how that crop is tested', async () => {
    await createLotWithPacket();
    await recordTest();
    const found = await getGerminationTest('T-0001');
    expect(found).toMatchObject({ number: 'T-0001', lot: { number: 'L-2020-001', accessionName: 'Skerry Winter' } });
    expect(found?.replicates.map((dish) => [dish.position, dish.dead])).toEqual([
      [1, 6],
      [2, 8],
    ]);
    expect(found?.crop.methods[0]).toMatchObject({ finalCountDays: 14, mark: 'published' });
    // 7 CFR 201.31: leek 60 %
    expect(found?.crop.minimumStandard).toMatchObject({ proportion: 0.6, mark: 'published' });
  });

  test('that is not there is null', async () => {
    expect(await getGerminationTest('T-9999')).toBeNull();
  });

  test('knows every version of itself, whichever of them is opened', async () => {
    await createLotWithPacket();
    const first = await recordTest();
    const correction = { correctionReason: 'A slip of the pen.', correctsId: first.id };
    const second = await recordTest({ ...correction, finishedOn: '2026-03-17' });
    await recordTest({ ...correction, correctsId: second.id, finishedOn: '2026-03-18' });
    for (const number of ['T-0001', 'T-0002', 'T-0003']) {
      const found = await getGerminationTest(number);
      expect(found?.versions.map((version) => version.number)).toEqual(['T-0001', 'T-0002', 'T-0003']);
    }
    expect((await getGerminationTest('T-0001'))?.correctedByNumber).toBe('T-0002');
    expect((await getGerminationTest('T-0003'))?.correctedByNumber).toBeNull();
  });

  test('is compared with the test of the same lot before it, never with one that was corrected', async () => {
    await createLotWithPacket();
    await createLotWithPacket({ number: 'L-2020-002' });
    await recordTest({ lot: 'L-2020-002', setOn: '2025-03-01', finishedOn: '2025-03-10' });
    const wrong = await recordTest({ setOn: '2025-01-01', finishedOn: '2025-01-10' });
    const right = await recordTest({
      ...{ setOn: '2024-01-01', finishedOn: '2024-01-10', correctsId: wrong.id, correctionReason: 'The wrong year.' },
    });
    const last = await recordTest();
    expect((await getGerminationTest(last.number))?.before).toMatchObject({
      number: right.number,
      seeds: 100,
      normal: 81,
    });
    expect((await getGerminationTest(right.number))?.before).toBeNull();
  });

  test('comes with the tests of about its time, itself included, and no later or corrected ones', async () => {
    await createLotWithPacket();
    await recordTest({ setOn: '2025-01-01', finishedOn: '2025-01-10' });
    const wrong = await recordTest({ setOn: '2025-12-01', finishedOn: '2025-12-10' });
    await recordTest({
      ...{ setOn: '2025-12-02', finishedOn: '2025-12-10' },
      correctsId: wrong.id,
      correctionReason: 'A day.',
    });
    const test = await recordTest({ setOn: '2026-01-05', finishedOn: '2026-01-15' });
    await recordTest({ setOn: '2026-02-05', finishedOn: '2026-02-15' });
    expect((await getGerminationTest(test.number))?.ofOneTime).toEqual([
      { seeds: 100, normal: 81 },
      { seeds: 100, normal: 81 },
    ]);
  });

  test('knows that the lot was tested since, unless that was written down on the wrong lot', async () => {
    await createLotWithPacket();
    await createLotWithPacket({ number: 'L-2020-002' });
    const early = await recordTest({ setOn: '2025-01-01', finishedOn: '2025-01-10' });
    expect((await getGerminationTest(early.number))?.newest).toBeNull();
    const wrongLot = await recordTest();
    expect((await getGerminationTest(early.number))?.newest?.number).toBe(wrongLot.number);
    await recordTest({ correctsId: wrongLot.id, correctionReason: 'The next jar.', lot: 'L-2020-002' });
    expect((await getGerminationTest(early.number))?.newest).toBeNull();
  });

  test('carries the history of all its versions, whichever is looked at, the correction first', async () => {
    await createLotWithPacket();
    const first = await recordTest();
    await recordTest({ correctsId: first.id, correctionReason: 'A slip of the pen.', finishedOn: '2026-03-17' });
    for (const number of ['T-0001', 'T-0002']) {
      const trail = (await getGerminationTest(number))?.history.map((entry) => entry.summary);
      expect(trail, number).toEqual([
        'Corrected by T-0002. Reason: A slip of the pen.',
        'Corrected T-0001 as T-0002, lot L-2020-001: 81 normal of 100 seeds. Reason: A slip of the pen.',
        'Recorded T-0001 on lot L-2020-001: 81 normal of 100 seeds',
      ]);
    }
  });
});

describe('the lot to test', () => {
  test('comes with what its packets hold now', async () => {
    const { packetId } = await createLotWithPacket({ seeds: 1000 });
    await recordTest({ packetId, takeSeed: 'on' });
    expect((await getLotForTesting('L-2020-001'))?.packets).toMatchObject([{ id: packetId, seeds: 900 }]);
    expect(await getLotForTesting('L-1999-001')).toBeNull();
  });

  test('is found by part of its number or of the variety, newest harvest first', async () => {
    await createLotWithPacket();
    await createLotWithPacket({ number: 'L-2022-009', harvestedOn: '2022-09-01', accessionName: 'Holm Yellow' });
    const found = async (text: string) => (await findLotsToTest(text)).map((lot) => lot.number);
    expect(await found('l-20')).toEqual(['L-2022-009', 'L-2020-001']);
    expect(await found('skerry')).toEqual(['L-2020-001']);
    expect(await found('  ')).toEqual([]);
  });
});

test('a lot to be tested names seed that was taken out for a test, until a test names it', async () => {
  const { number, packetId } = await createLotWithPacket({ number: 'L-2020-777' });
  await takeSeedOut(VOLUNTEER, { packetId, amount: '100', unit: 'seeds', reason: 'test', on: '2026-03-01' });
  await takeSeedOut(VOLUNTEER, { packetId, amount: '100', unit: 'seeds', reason: 'sowing', on: '2026-03-01' });
  const [taken, ...others] = (await getLotForTesting(number))?.takenOut ?? [];
  expect(taken).toMatchObject({ packetNumber: expect.stringMatching(/^P-/), on: '2026-03-01', seeds: 100 });
  expect(others).toEqual([]);
  await recordTest({ lot: number, withdrawalId: taken?.id });
  expect((await getLotForTesting(number))?.takenOut).toEqual([]);
});
