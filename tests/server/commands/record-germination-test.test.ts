import { describe, expect, test } from 'vitest';
import { recordGerminationTest } from '@/lib/server/commands/record-germination-test';
import { connections } from '@/lib/server/database/connections';
import { createLotWithPacket, germinationTestOf, recordTest } from '../../support/create-tested-lot';
import { VISITOR, VOLUNTEER } from '../../support/people';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

const seedsIn = async (packetId: string) =>
  (await connections().reader.movement.aggregate({ where: { packetId }, _sum: { seeds: true } }))._sum.seeds;
const countTests = () => connections().reader.germinationTest.count();

describe('a test', () => {
  test('is kept with its replicates in order, a number, and an audit entry by the person', async () => {
    const { lotId } = await createLotWithPacket();
    const { id, number } = await recordTest({ method: 'Top of paper, 20 °C' });
    expect(number).toBe('T-0001');
    const kept = await connections().reader.germinationTest.findUniqueOrThrow({
      where: { id },
      include: { replicates: { orderBy: { position: 'asc' } } },
    });
    expect(kept).toMatchObject({ lotId, method: 'Top of paper, 20 °C', byId: VOLUNTEER.id, correctsId: null });
    expect(kept.replicates).toMatchObject([
      { position: 1, seeds: 50, normal: 41, abnormal: 3, hard: 0, fresh: 0, dead: 6 },
      { position: 2, seeds: 50, normal: 40, abnormal: 2, hard: 0, fresh: 0, dead: 8 },
    ]);
    const audit = await connections().reader.auditEntry.findMany({ where: { entityId: id } });
    expect(audit.map((entry) => [entry.byName, entry.summary])).toEqual([
      [VOLUNTEER.name, 'Recorded T-0001 on lot L-2020-001: 81 normal of 100 seeds'],
    ]);
  });

  test('has the lot judged anew', async () => {
    const { lotId } = await createLotWithPacket();
    const judged = () => connections().reader.lotJudgement.findUniqueOrThrow({ where: { lotId } });
    expect((await judged()).lastTestedOn).toBeNull();
    await recordTest();
    expect(await judged()).toMatchObject({ lastTestedOn: '2026-03-16', judgedOn: '2026-11-25' });
  });

  test('is for volunteers and stewards, not for visitors or nobody', async () => {
    await createLotWithPacket();
    await expect(recordTest({}, VISITOR)).rejects.toMatchObject({ code: 'not-allowed' });
    await expect(recordGerminationTest(null, germinationTestOf())).rejects.toMatchObject({ code: 'sign-in-needed' });
    expect(await countTests()).toBe(0);
  });

  test('of an unknown lot is refused beside the lot', async () => {
    await expect(recordTest({ lot: 'L-1999-001' })).rejects.toMatchObject({
      code: 'refused',
      fieldErrors: { lot: expect.stringContaining('L-1999-001') },
    });
  });

  test('cannot be set before the lot was harvested, but on that day it can', async () => {
    await createLotWithPacket({ harvestedOn: '2026-03-03', seeds: 1000 });
    await expect(recordTest({ setOn: '2026-03-02' })).rejects.toMatchObject({
      fieldErrors: { setOn: expect.stringContaining('2026-03-03') },
    });
    await expect(recordTest({ setOn: '2026-03-03' })).resolves.toMatchObject({ number: 'T-0001' });
  });

  test('written down twice is refused, so that a form sent twice is not twice the evidence', async () => {
    await createLotWithPacket();
    await recordTest();
    await expect(recordTest()).rejects.toMatchObject({
      code: 'conflict',
      userMessage: expect.stringContaining('T-0001'),
    });
    await expect(recordTest({ finishedOn: '2026-03-17' })).resolves.toMatchObject({ number: 'T-0002' });
  });

  test('sent twice at the same moment is kept once', async () => {
    await createLotWithPacket();
    const outcomes = await Promise.allSettled([recordTest(), recordTest()]);
    expect(outcomes.map((outcome) => outcome.status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(await countTests()).toBe(1);
  });

  test('cannot be changed or deleted afterwards, nor its replicates', async () => {
    await createLotWithPacket();
    const { id } = await recordTest();
    const { bulk } = connections();
    for (const statement of [
      `UPDATE "GerminationTest" SET "notes" = 'x' WHERE "id" = ?`,
      `DELETE FROM "GerminationTest" WHERE "id" = ?`,
      `UPDATE "Replicate" SET "normal" = 50 WHERE "testId" = ?`,
      `DELETE FROM "Replicate" WHERE "testId" = ?`,
    ]) {
      expect(() => bulk.prepare(statement).run(id)).toThrow('append-only');
    }
  });
});

describe('the seeds of a test', () => {
  test('come out of the packet with reason "test" on the day it was set', async () => {
    const { packetId } = await createLotWithPacket({ seeds: 1000 });
    await recordTest({ packetId, takeSeed: 'on' });
    expect(await seedsIn(packetId)).toBe(900);
    const movements = await connections().reader.movement.findMany({ where: { packetId, reason: 'test' } });
    expect(movements).toMatchObject([{ seeds: -100, on: '2026-03-02', note: 'Germination test T-0001' }]);
    const audit = await connections().reader.auditEntry.findMany({ where: { entity: 'packet', entityId: packetId } });
    expect(audit).toHaveLength(1);
  });

  test('stay in the ledger when they are not to be taken out', async () => {
    const { packetId } = await createLotWithPacket({ seeds: 1000 });
    await recordTest({ packetId });
    expect(await seedsIn(packetId)).toBe(1000);
  });

  test('never overdraw a packet: all of it may go, one seed more is refused and nothing is kept', async () => {
    const { packetId } = await createLotWithPacket({ seeds: 99 });
    await expect(recordTest({ packetId, takeSeed: 'on' })).rejects.toMatchObject({
      code: 'refused',
      fieldErrors: { packetId: expect.stringMatching(/holds 99 seeds, and the replicates need 100/) },
    });
    expect(await countTests()).toBe(0);
    const last = await createLotWithPacket({ number: 'L-2020-002', seeds: 100 });
    await recordTest({ lot: last.number, packetId: last.packetId, takeSeed: 'on' });
    expect(await seedsIn(last.packetId)).toBe(0);
  });

  test('cannot come out of a packet that was filled after the test was set', async () => {
    const { packetId } = await createLotWithPacket({ filledOn: '2026-03-03' });
    await expect(recordTest({ packetId, takeSeed: 'on' })).rejects.toMatchObject({
      fieldErrors: { packetId: expect.stringContaining('2026-03-03') },
    });
  });

  test('cannot come out of a packet of another lot', async () => {
    await createLotWithPacket();
    const { packetId } = await createLotWithPacket({ number: 'L-2020-002' });
    await expect(recordTest({ packetId })).rejects.toMatchObject({
      fieldErrors: { packetId: expect.stringContaining('L-2020-001') },
    });
  });
});

describe('a correction', () => {
  const correction = (correctsId: string, overrides: Record<string, unknown> = {}) => ({
    correctsId,
    correctionReason: 'Two figures were swapped.',
    replicates: [
      { seeds: '50', normal: '14' },
      { seeds: '50', normal: '40' },
    ],
    ...overrides,
  });

  test('is a new test that names the old one, which stays as it was', async () => {
    await createLotWithPacket();
    const old = await recordTest();
    const corrected = await recordTest(correction(old.id));
    expect(corrected.number).toBe('T-0002');
    const tests = await connections().reader.germinationTest.findMany({
      orderBy: { number: 'asc' },
      include: { replicates: true },
    });
    expect(tests.map((one) => one.correctsId)).toEqual([null, old.id]);
    expect(tests[0]?.replicates.map((dish) => dish.normal)).toEqual([41, 40]);
    const audit = await connections().reader.auditEntry.findMany({
      where: { entity: 'germination test' },
      orderBy: { id: 'asc' },
    });
    expect(audit.map((entry) => entry.summary).slice(1)).toEqual([
      'Corrected T-0001 as T-0002, lot L-2020-001: 54 normal of 100 seeds. Reason: Two figures were swapped.',
      'Corrected by T-0002. Reason: Two figures were swapped.',
    ]);
  });

  test('does not take the seeds out a second time', async () => {
    const { packetId } = await createLotWithPacket({ seeds: 1000 });
    const old = await recordTest({ packetId, takeSeed: 'on' });
    await recordTest(correction(old.id, { packetId, takeSeed: 'on' }));
    expect(await seedsIn(packetId)).toBe(900);
  });

  test('of a test that was corrected already is refused, and the message names the newer one', async () => {
    await createLotWithPacket();
    const old = await recordTest();
    const newer = await recordTest(correction(old.id));
    await expect(recordTest(correction(old.id, { finishedOn: '2026-03-20' }))).rejects.toMatchObject({
      code: 'conflict',
      userMessage: expect.stringContaining('T-0002'),
    });
    await expect(recordTest(correction(newer.id, { finishedOn: '2026-03-20' }))).resolves.toMatchObject({
      number: 'T-0003',
    });
  });

  test('sent by two people at once: one is kept, the other is told', async () => {
    await createLotWithPacket();
    const old = await recordTest();
    const outcomes = await Promise.allSettled([
      recordTest(correction(old.id)),
      recordTest(correction(old.id, { finishedOn: '2026-03-20' })),
    ]);
    expect(outcomes.map((outcome) => outcome.status).sort()).toEqual(['fulfilled', 'rejected']);
  });

  test('may keep the counts and mend only the lot', async () => {
    await createLotWithPacket();
    await createLotWithPacket({ number: 'L-2020-002' });
    const old = await recordTest();
    const { id } = await recordTest({ correctsId: old.id, correctionReason: 'The next jar.', lot: 'L-2020-002' });
    const kept = await connections().reader.germinationTest.findUniqueOrThrow({
      where: { id },
      include: { lot: true },
    });
    expect(kept.lot.number).toBe('L-2020-002');
  });

  test('of a test that is not there is refused', async () => {
    await createLotWithPacket();
    await expect(recordTest(correction('no-such-test'))).rejects.toMatchObject({ code: 'not-found' });
  });
});
