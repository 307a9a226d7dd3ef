import { describe, expect, test } from 'vitest';
import { closeTray } from '@/lib/server/commands/close-tray';
import { reopenTray } from '@/lib/server/commands/reopen-tray';
import { writeTrayCounts } from '@/lib/server/commands/write-tray-counts';
import { connections, reader } from '@/lib/server/database/connections';
import { createLotWithPacket, recordTest } from '../../support/create-tested-lot';
import { createTray } from '../../support/create-tray';
import { STEWARD, VISITOR, VOLUNTEER } from '../../support/people';
import { refusal } from '../../support/refusal';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

const COUNTED = [
  { on: '2026-11-23', dish: 1, found: { normal: 30 } },
  { on: '2026-11-23', dish: 2, found: { normal: 28, dead: 1 } },
  { on: '2026-11-24', dish: 1, found: { normal: 11, abnormal: 2, hard: 3, fresh: 1, dead: 3 } },
  { on: '2026-11-24', dish: 2, found: { normal: 13, dead: 8 } },
];
const close = (trayId: string, more: Record<string, unknown> = {}) => closeTray(VOLUNTEER, { trayId, ...more });
const reopen = (trayId: string, reason = 'Dish 2 was read wrongly') => reopenTray(VOLUNTEER, { trayId, reason });
const write = (trayId: string, on: string, dishes: Record<string, Record<string, string>>, version = '') =>
  writeTrayCounts(VOLUNTEER, { trayId, on, dishes, version });
const testNumbered = (number: string) =>
  reader().germinationTest.findUnique({
    where: { number },
    include: { replicates: { orderBy: { position: 'asc' } }, corrects: { select: { number: true } } },
  });
const judgementOf = (lotId: string) => reader().lotJudgement.findUniqueOrThrow({ where: { lotId } });
const summaries = async (entity: string, entityId: string) =>
  (await reader().auditEntry.findMany({ where: { entity, entityId }, orderBy: { id: 'asc' } })).map(
    ({ summary }) => summary,
  );
describe('closing a tray', () => {
  test('writes the finished test: same number, same seed taken out, dishes added up, ended on the last day counted', async () => {
    const tray = await createTray({ counts: COUNTED });
    expect(await close(tray.id)).toEqual({ number: tray.number });
    const written = await testNumbered(tray.number);
    expect(written).toMatchObject({
      lotId: tray.lotId,
      packetId: tray.packetId,
      trayId: tray.id,
      withdrawalId: `${tray.id}-out`,
      setOn: '2026-11-18',
      finishedOn: '2026-11-24',
      method: '20 °C',
      correctsId: null,
      byId: VOLUNTEER.id,
    });
    expect(written?.replicates).toMatchObject([
      { position: 1, seeds: 50, normal: 41, abnormal: 2, hard: 3, fresh: 1, dead: 3 },
      { position: 2, seeds: 50, normal: 41, abnormal: 0, hard: 0, fresh: 0, dead: 9 },
    ]);
    expect(await reader().tray.findUniqueOrThrow({ where: { id: tray.id } })).toMatchObject({
      status: 'closed',
      closedOn: '2026-11-24',
      version: 2,
    });
    expect(await summaries('tray', tray.id)).toEqual([
      `Closed tray ${tray.number} as test ${tray.number}: 82 normal of 100 seeds`,
    ]);
  });

  test('takes no seed out of the packet: it went out when the tray was set', async () => {
    const tray = await createTray({ counts: COUNTED });
    const lines = () => reader().movement.count();
    const before = await lines();
    await close(tray.id);
    expect(await lines()).toBe(before);
  });

  test('judges the lot anew in the same breath: last test, next test and band change', async () => {
    const tray = await createTray({ counts: COUNTED });
    const before = await judgementOf(tray.lotId);
    await close(tray.id);
    const after = await judgementOf(tray.lotId);
    expect([before.lastTestedOn, after.lastTestedOn]).toEqual([null, '2026-11-24']);
    expect(after.judgedOn).toBe('2026-11-25');
    expect(after.testDueOn).not.toBe(before.testDueOn);
    const width = (one: typeof after) => (one.viabilityUpper ?? 1) - (one.viabilityLower ?? 0);
    expect(width(after)).toBeLessThan(width(before));
  });

  test('keeps the notes of the tray and of the bench', async () => {
    const tray = await createTray({ counts: COUNTED });
    await connections().writer.trayNote.create({
      data: {
        ...{ id: '019a0000-0000-7000-9000-000000000001', trayId: tray.id, dish: 2, on: '2026-11-23', kind: 'note' },
        ...{ text: 'mouldy at the rim', deviceId: 'd', madeAt: new Date(), byId: 'v', byName: 'Moss' },
      },
    });
    await close(tray.id);
    expect((await testNumbered(tray.number))?.notes).toBe('2026-11-23, dish 2: mouldy at the rim');
  });

  test('is refused while seed is not classed or counts disagree, each dish named, and nothing is written', async () => {
    const tray = await createTray({
      counts: [...COUNTED.slice(0, 3), { on: '2026-11-23', dish: 1, found: { normal: 31 } }],
    });
    const { userMessage } = await refusal(close(tray.id));
    expect(userMessage).toContain('Dish 1: counts of 2026-11-23 disagree');
    expect(userMessage).toContain('Dish 2: 21 seeds are not classed yet');
    expect(await reader().germinationTest.count()).toBe(0);
    expect((await reader().tray.findUniqueOrThrow({ where: { id: tray.id } })).status).toBe('open');
  });

  test('is for volunteers and stewards; a tray is closed once', async () => {
    const tray = await createTray({ counts: COUNTED });
    expect((await refusal(closeTray(VISITOR, { trayId: tray.id }))).code).toBe('not-allowed');
    const outcomes = await Promise.allSettled([close(tray.id), close(tray.id)]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(await reader().germinationTest.count()).toBe(1);
    expect((await refusal(closeTray(STEWARD, { trayId: 'nothing' }))).code).toBe('not-found');
  });

  test('two trays of one lot that end alike on the same days are two tests', async () => {
    const { number } = await createLotWithPacket();
    const first = await createTray({ lotNumber: number, counts: COUNTED });
    const second = await createTray({ lotNumber: number, counts: COUNTED });
    await close(first.id);
    await close(second.id);
    expect(await reader().germinationTest.count()).toBe(2);
  });

  test('a test of the same days and counts written by hand is asked about, and may be another test', async () => {
    const tray = await createTray({ counts: COUNTED });
    const replicates = [
      { seeds: '50', normal: '41', abnormal: '2', hard: '3', fresh: '1', dead: '3' },
      { seeds: '50', normal: '41', dead: '9' },
    ];
    const byHand = await recordTest({ setOn: '2026-11-18', finishedOn: '2026-11-24', replicates });
    expect(byHand.number).not.toBe(tray.number);
    expect((await refusal(close(tray.id))).fieldErrors.anotherTest).toContain(byHand.number);
    expect(await close(tray.id, { anotherTest: 'on' })).toEqual({ number: tray.number });
    // And the other way round: what the tray says is not written down by hand once more.
    const again = await refusal(recordTest({ setOn: '2026-11-18', finishedOn: '2026-11-24', replicates }));
    expect(again.code).toBe('conflict');
  });
});

describe('reopening and closing again', () => {
  test('needs a reason, is audited on tray and test, and the test speaks on until then', async () => {
    const tray = await createTray({ counts: COUNTED });
    await close(tray.id);
    expect((await refusal(reopen(tray.id, ' '))).fieldErrors.reason).toMatch(/Say why/);
    const judged = await judgementOf(tray.lotId);
    await reopen(tray.id);
    expect(await judgementOf(tray.lotId)).toEqual(judged);
    const written = await testNumbered(tray.number);
    expect((await summaries('tray', tray.id)).at(-1)).toBe(
      `Reopened tray ${tray.number}. Reason: Dish 2 was read wrongly`,
    );
    expect((await summaries('germination test', written?.id ?? '')).at(-1)).toMatch(
      /speaks for the lot until it is closed again/,
    );
    expect((await refusal(reopen(tray.id))).code).toBe('conflict');
  });

  test('writes a further test that corrects the first, and the lot follows it', async () => {
    const tray = await createTray({ counts: COUNTED });
    await close(tray.id);
    const before = await judgementOf(tray.lotId);
    await reopen(tray.id);
    const version = await standing(tray.id);
    const dish2 = { normal: '3', dead: '18' };
    const dish1 = { normal: '11', abnormal: '2', hard: '3', fresh: '1', dead: '3' };
    await write(tray.id, '2026-11-24', { [`${tray.id}-dish-1`]: dish1, [`${tray.id}-dish-2`]: dish2 }, version);
    const second = await close(tray.id);
    const corrected = await testNumbered(second.number);
    expect(corrected).toMatchObject({ trayId: tray.id, withdrawalId: null, corrects: { number: tray.number } });
    expect(corrected?.replicates.map(({ normal }) => normal)).toEqual([41, 31]);
    expect((await judgementOf(tray.lotId)).viabilityMedian ?? 1).toBeLessThan(before.viabilityMedian ?? 0);

    await reopen(tray.id, 'once more');
    await write(
      tray.id,
      '2026-11-24',
      { [`${tray.id}-dish-1`]: dish1, [`${tray.id}-dish-2`]: { normal: '4', dead: '17' } },
      await standing(tray.id),
    );
    const third = await close(tray.id);
    expect((await testNumbered(third.number))?.corrects?.number).toBe(second.number);
    expect(new Set([tray.number, second.number, third.number]).size).toBe(3);
  });

  test('with nothing changed writes no further test', async () => {
    const tray = await createTray({ counts: COUNTED });
    await close(tray.id);
    await reopen(tray.id, 'by mistake');
    expect(await close(tray.id)).toEqual({ number: tray.number });
    expect(await reader().germinationTest.count()).toBe(1);
    expect((await summaries('tray', tray.id)).at(-1)).toMatch(/nothing had changed/);
  });

  test('corrects what the test was corrected to by hand meanwhile', async () => {
    const tray = await createTray({ counts: COUNTED });
    await close(tray.id);
    const first = await testNumbered(tray.number);
    const byHand = await recordTest({
      ...{ correctsId: first?.id, correctionReason: 'A slip', setOn: '2026-11-18', finishedOn: '2026-11-24' },
      replicates: [{ seeds: '100', normal: '70' }],
    });
    await reopen(tray.id, 'the slip was elsewhere');
    const again = await close(tray.id);
    expect((await testNumbered(again.number))?.corrects?.number).toBe(byHand.number);
  });
});

/** What stands of the last day: the newest count of each dish. */
async function standing(trayId: string): Promise<string> {
  const rows = await reader().trayCount.findMany({ where: { trayId, on: '2026-11-24' }, orderBy: { id: 'asc' } });
  const replaced = new Set(rows.flatMap(({ replaces }) => JSON.parse(replaces) as string[]));
  return rows
    .map(({ id }) => id)
    .filter((id) => !replaced.has(id))
    .sort()
    .join(' ');
}
