import { describe, expect, it } from 'vitest';
import { recordGerminationTest } from '@/lib/server/commands/record-germination-test';
import { recordMoistureTest } from '@/lib/server/commands/record-moisture-test';
import { recordViabilityTest } from '@/lib/server/commands/record-viability-test';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { connections, reader } from '@/lib/server/database/connections';
import { getLotForTesting } from '@/lib/server/queries/lots-for-testing';
import { ungerminatedSeed } from '@/lib/server/trays/ungerminated-seed';
import { countRows, lastAuditLine } from '@/tests/support/audit';
import { createLotWithPacket, germinationTestOf } from '@/tests/support/create-tested-lot';
import { createTray } from '@/tests/support/create-tray';
import { heldIn, ledgerOf } from '@/tests/support/ledger';
import { VISITOR, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const LOT = 'L-2020-001';
const stained = (overrides: object = {}) => ({
  lot: LOT,
  kind: 'tetrazolium',
  testedOn: '2026-11-20',
  stainedNormally: '45',
  stainedAbnormally: '3',
  unstained: '2',
  ...overrides,
});
const record = (overrides: object = {}) => recordViabilityTest(VOLUNTEER, stained(overrides));
const tests = () => reader().viabilityTest.findMany({ orderBy: { number: 'asc' } });

describe('a viability test of a packet', () => {
  it('is written with its counts, a number, and an audit entry by the person', async () => {
    await createLotWithPacket();
    expect(await record({ method: '1 %, 30 °C', notes: 'radicles pale' })).toEqual({ number: 'V-0001' });
    expect(await tests()).toMatchObject([
      {
        ...{ number: 'V-0001', kind: 'tetrazolium', testedOn: '2026-11-20', byId: VOLUNTEER.id },
        ...{ stainedNormally: 45, stainedAbnormally: 3, unstained: 2, firm: null, dead: null },
        ...{ method: '1 %, 30 °C', notes: 'radicles pale', packetId: null, trayId: null, withdrawalId: null },
      },
    ]);
    expect(lastAuditLine()).toMatchObject({
      command: 'record-viability-test',
      entity: 'viability test',
      byName: VOLUNTEER.name,
      summary: `Recorded V-0001 on lot ${LOT}: tetrazolium test, 45 of 50 seeds stained as living seed`,
    });
  });

  it('takes its seed out of the ledger in the same step, and what is left is judged anew', async () => {
    const { packetId } = await createLotWithPacket();
    await record({ packetId, takeSeed: 'on' });
    expect(heldIn(packetId)).toBe(950);
    expect(ledgerOf(packetId).at(-1)).toMatchObject({
      ...{ reason: 'test', seeds: -50, seedsSd: 0, on: '2026-11-20', note: 'Tetrazolium test V-0001' },
    });
    expect((await tests())[0]?.withdrawalId).toBe(ledgerOf(packetId).at(-1)?.id);
    expect(await reader().lotJudgement.findFirstOrThrow()).toMatchObject({ seedsLeft: 950 });
  });

  it('never takes more than the packet holds, and then nothing of it stays', async () => {
    const { packetId } = await createLotWithPacket({ seeds: 49 });
    expect(await fieldMessage(record({ packetId, takeSeed: 'on' }), 'packetId')).toContain('holds 49 seeds');
    expect(countRows('ViabilityTest')).toBe(0);
    await record({ packetId, takeSeed: 'on', unstained: '1' });
    expect(heldIn(packetId)).toBe(0);
  });

  it('does not change the forecast: only seedlings do', async () => {
    const { packetId } = await createLotWithPacket();
    const before = await reader().lotJudgement.findFirstOrThrow();
    await record({ packetId, takeSeed: 'on', stainedNormally: '0', unstained: '50' });
    const after = await reader().lotJudgement.findFirstOrThrow();
    expect([after.viabilityMedian, after.viabilityLower, after.testDueOn]).toEqual([
      before.viabilityMedian,
      before.viabilityLower,
      before.testDueOn,
    ]);
  });

  it('names seed that was taken out before, which no other test and no taking back can have then', async () => {
    const { packetId } = await createLotWithPacket();
    await takeSeedOut(VOLUNTEER, { packetId, amount: '60', unit: 'seeds', reason: 'test', on: '2026-11-19' });
    const withdrawalId = ledgerOf(packetId).at(-1)?.id;
    await record({ withdrawalId });
    expect((await tests())[0]).toMatchObject({ withdrawalId, packetId });
    expect(heldIn(packetId)).toBe(940);
    expect(await fieldMessage(record({ withdrawalId, testedOn: '2026-11-21' }), 'withdrawalId')).toContain('V-0001');
    expect((await refusal(undoMovement(VOLUNTEER, { movementId: withdrawalId }))).userMessage).toContain('V-0001');
    const germination = recordGerminationTest(VOLUNTEER, germinationTestOf({ withdrawalId }));
    expect(await fieldMessage(germination, 'withdrawalId')).toContain('V-0001');
    expect((await getLotForTesting(LOT))?.takenOut).toEqual([]);
  });

  it('does not take seed that a moisture test has used, or that came out later, or less than it used', async () => {
    const { packetId } = await createLotWithPacket();
    await recordMoistureTest(VOLUNTEER, {
      ...{ lot: LOT, packetId, testedOn: '2026-11-20', method: 'meter', moisturePercent: '7' },
      ...{ takeSeed: 'on', amount: '60', unit: 'seeds' },
    });
    const used = ledgerOf(packetId).at(-1)?.id;
    expect(await fieldMessage(record({ withdrawalId: used }), 'withdrawalId')).toContain('M-0001');
    await takeSeedOut(VOLUNTEER, { packetId, amount: '49', unit: 'seeds', reason: 'test', on: '2026-11-21' });
    const later = ledgerOf(packetId).at(-1)?.id;
    expect(await fieldMessage(record({ withdrawalId: later }), 'withdrawalId')).toContain('Only 49 seeds');
    const fewer = { withdrawalId: later, unstained: '1' };
    expect(await fieldMessage(record(fewer), 'testedOn')).toContain('2026-11-21');
    expect(countRows('ViabilityTest')).toBe(0);
  });

  it('refuses what cannot be', async () => {
    const { packetId } = await createLotWithPacket({ filledOn: '2021-01-01' });
    const other = await createLotWithPacket({ number: 'L-2020-002' });
    expect(await fieldMessage(record({ lot: 'L-1900-001' }), 'lot')).toContain('no lot L-1900-001');
    expect(await fieldMessage(record({ testedOn: '2020-09-14' }), 'testedOn')).toContain('harvested on 2020-09-15');
    expect(await fieldMessage(record({ packetId: other.packetId }), 'packetId')).toContain(LOT);
    const early = { packetId, takeSeed: 'on', testedOn: '2020-12-31' };
    expect(await fieldMessage(record(early), 'packetId')).toContain('filled on 2021-01-01');
    expect((await refusal(recordViabilityTest(VISITOR, stained()))).code).toBe('not-allowed');
    expect(countRows('ViabilityTest')).toBe(0);
  });

  it('is not written down twice, also when two people press at once', async () => {
    await createLotWithPacket();
    const outcomes = await Promise.allSettled([record(), record()]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect((await refusal(record())).userMessage).toContain('V-0001');
    await record({ testedOn: '2026-11-21' });
    await record({ kind: 'cut', firm: '45', empty: '5' });
    expect(countRows('ViabilityTest')).toBe(3);
  });
});

describe('a viability test of seed left in a tray', () => {
  const counted = (extra: { hard?: number; fresh?: number; dead?: number } = {}) =>
    createTray({
      counts: [
        { on: '2026-11-23', dish: 1, found: { normal: 40 } },
        { on: '2026-11-23', dish: 2, found: { normal: 38, abnormal: 2, ...extra } },
      ],
    });

  it('takes no seed out of a packet: the tray did', async () => {
    const tray = await counted();
    const before = heldIn(tray.packetId ?? '');
    await record({ trayId: tray.id, takeSeed: 'on', stainedNormally: '6', stainedAbnormally: '', unstained: '' });
    expect(heldIn(tray.packetId ?? '')).toBe(before);
    expect((await tests())[0]).toMatchObject({ trayId: tray.id, packetId: tray.packetId, withdrawalId: null });
    expect(lastAuditLine()?.summary).toContain(`left over in ${tray.number}`);
  });

  it('examines no more than did not grow, all tests of the tray together', async () => {
    // 100 set, 78 normal, 2 abnormal, 5 dead: 15 left, of which 3 classed fresh
    const tray = await counted({ fresh: 3, dead: 5 });
    const of = (normally: number, overrides: object = {}) =>
      record({ trayId: tray.id, stainedNormally: normally, stainedAbnormally: '', unstained: '', ...overrides });
    expect(await fieldMessage(of(16), 'trayId')).toContain('15 hard, fresh or unclassed seeds');
    await of(9);
    expect(await fieldMessage(of(7), 'trayId')).toContain('6 hard, fresh or unclassed seeds');
    await of(6);
    expect(await fieldMessage(of(1), 'trayId')).toContain('0 hard, fresh or unclassed seeds');
    // A correction frees what it takes the place of.
    const corrected = (await tests())[0]?.id;
    const correction = { correctsId: corrected, correctionReason: 'miscounted' };
    expect(await fieldMessage(of(10, correction), 'trayId')).toContain('9 hard, fresh');
    await of(8, correction);
    const seed = await ungerminatedSeed(reader(), { id: tray.id });
    expect(seed).toMatchObject({
      seeds: 100,
      normal: 78,
      abnormal: 2,
      hardOrFresh: 3,
      unclassed: 12,
      testNumber: null,
    });
    expect(seed?.examined.map(({ number, seeds, alive }) => [number, seeds, alive])).toEqual([
      ['V-0002', 6, 6],
      ['V-0003', 8, 8],
    ]);
  });

  it('goes by the test that closing wrote, and by what that was corrected to', async () => {
    const tray = await counted();
    const bulk = connections().bulk;
    const close = (id: string, number: string, hard: number, corrects: string | null) => {
      bulk
        .prepare(
          `INSERT INTO "GerminationTest" ("id", "number", "lotId", "setOn", "finishedOn", "byId", "trayId", "correctsId")
           VALUES (?, ?, ?, '2026-11-18', '2026-11-24', 'v', ?, ?)`,
        )
        .run(id, number, tray.lotId, corrects ? null : tray.id, corrects);
      bulk
        .prepare(
          `INSERT INTO "Replicate" ("testId", "position", "seeds", "normal", "abnormal", "hard", "fresh", "dead")
           VALUES (?, 1, 100, 78, 2, ?, 5, ?)`,
        )
        .run(id, hard, 15 - hard);
    };
    close('g1', tray.number, 4, null);
    bulk.prepare(`UPDATE "Tray" SET "status" = 'closed', "closedOn" = '2026-11-24' WHERE "id" = ?`).run(tray.id);
    expect(await ungerminatedSeed(reader(), { number: tray.number })).toMatchObject({
      ...{ normal: 78, hardOrFresh: 9, unclassed: 0, testNumber: tray.number },
    });
    close('g2', 'T-0900', 1, 'g1');
    expect(await ungerminatedSeed(reader(), { id: tray.id })).toMatchObject({ hardOrFresh: 6, testNumber: 'T-0900' });
    const tooMany = record({ trayId: tray.id, stainedNormally: '7', stainedAbnormally: '', unstained: '' });
    expect(await fieldMessage(tooMany, 'trayId')).toContain('has 6 hard');
  });

  it('refuses a tray of another lot, one given up, and a day before it was set', async () => {
    const tray = await counted();
    await createLotWithPacket({ number: 'L-2020-002' });
    const six = { trayId: tray.id, stainedNormally: '6', stainedAbnormally: '', unstained: '' };
    expect(await fieldMessage(record({ ...six, lot: 'L-2020-002' }), 'trayId')).toContain('L-2020-002');
    expect(await fieldMessage(record({ ...six, trayId: 'nothing' }), 'trayId')).toContain(LOT);
    expect(await fieldMessage(record({ ...six, testedOn: '2026-11-17' }), 'testedOn')).toContain('2026-11-18');
    connections().bulk.prepare(`UPDATE "Tray" SET "status" = 'given-up'`).run();
    expect(await fieldMessage(record(six), 'trayId')).toContain('given up');
    expect(await ungerminatedSeed(reader(), { number: 'T-9999' })).toBeNull();
  });
});

describe('a correction', () => {
  it('takes the place of the test it names, once, says why, and takes no seed again', async () => {
    const { packetId } = await createLotWithPacket();
    await record({ packetId, takeSeed: 'on' });
    const [first] = await tests();
    const correction = { packetId, takeSeed: 'on', correctsId: first?.id, correctionReason: 'pale ones miscounted' };
    expect(await record({ ...correction, stainedNormally: '43', unstained: '4' })).toEqual({ number: 'V-0002' });
    expect(heldIn(packetId)).toBe(950);
    expect(lastAuditLine()?.summary).toBe('Corrected by V-0002. Reason: pale ones miscounted');
    expect((await refusal(record({ ...correction, unstained: '9' }))).userMessage).toContain(
      'corrected already, by V-0002',
    );
    expect((await tests())[0]).toEqual(first);
  });

  it('cannot be undone behind its back: the table only grows', async () => {
    await createLotWithPacket();
    await record();
    const { bulk } = connections();
    expect(() => bulk.exec('UPDATE "ViabilityTest" SET "unstained" = 0')).toThrow('append-only');
    expect(() => bulk.exec('DELETE FROM "ViabilityTest"')).toThrow('append-only');
  });
});
