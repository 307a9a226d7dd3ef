import { describe, expect, it } from 'vitest';
import { correctDryingWeighing } from '@/lib/server/commands/correct-drying-weighing';
import { endDryingRun } from '@/lib/server/commands/end-drying-run';
import { recordDryingWeighing } from '@/lib/server/commands/record-drying-weighing';
import { recordMoistureTest } from '@/lib/server/commands/record-moisture-test';
import { startDryingRun } from '@/lib/server/commands/start-drying-run';
import { connections, reader } from '@/lib/server/database/connections';
import { localDate, nowEpochSeconds } from '@/lib/server/local-time';
import { findDryingRuns, getDryingRun } from '@/lib/server/queries/drying-runs';
import { countRows, lastAuditLine } from '@/tests/support/audit';
import { makeLot } from '@/tests/support/create-lot';
import { VISITOR, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

/** 100 g tray with 500 g of seed at 12 %, from the 20th on. Target 7 %: 473.1 g of seed. */
const start = (lot: string, overrides: object = {}) =>
  startDryingRun(VOLUNTEER, {
    lot,
    startMoisturePercent: '12',
    targetMoisturePercent: '7',
    tareG: '100',
    weightG: '600',
    at: '2026-11-20T09:00',
    dryingWith: 'silica gel',
    ...overrides,
  });
async function makeRun(overrides: object = {}) {
  const lot = await makeLot();
  const { number } = await start(lot.number, { packetId: lot.packetId, ...overrides });
  const { id } = await reader().dryingRun.findUniqueOrThrow({ where: { number } });
  return { ...lot, run: number, runId: id };
}
const weigh = (runId: string, weightG: string, at?: string, overrides: object = {}) =>
  recordDryingWeighing(VOLUNTEER, { runId, weightG, at, ...overrides });
const correct = (weighingId: string, weightG: string, overrides: object = {}) =>
  correctDryingWeighing(VOLUNTEER, { weighingId, weightG, ...overrides });
const weights = async (run: string) => (await getDryingRun(run))?.weighings.map(({ weightG }) => weightG);

describe('startDryingRun', () => {
  it('writes the run with its first weighing, numbered, with an audit entry', async () => {
    const { run, number } = await makeRun();
    expect(run).toBe('D-0001');
    expect(await getDryingRun(run)).toMatchObject({
      lotNumber: number,
      startedOn: '2026-11-20',
      endedOn: null,
      startMoisturePercent: 12,
      tareG: 100,
      weighings: [{ weightG: 600 }],
      progress: { ok: true, targetWeightG: expect.closeTo((500 * 88) / 93, 9) },
    });
    expect(lastAuditLine()?.summary).toContain('from 12.0 % to 7 %, 600 g with the tray');
  });

  it('takes the moisture from a test that stands', async () => {
    const lot = await makeLot();
    const meter = { lot: lot.number, testedOn: '2026-11-19', method: 'meter' };
    await recordMoistureTest(VOLUNTEER, { ...meter, moisturePercent: '11.4' });
    const { id } = await reader().moistureTest.findFirstOrThrow();
    const fromTest = { startMoisturePercent: '', moistureTestId: id };
    const { number } = await start(lot.number, fromTest);
    expect(await getDryingRun(number)).toMatchObject({ startMoisturePercent: 11.4, moistureTestNumber: 'M-0001' });
    await recordMoistureTest(VOLUNTEER, {
      ...meter,
      moisturePercent: '12.4',
      correctsId: id,
      correctionReason: 'slip',
    });
    expect(await fieldMessage(start(lot.number, fromTest), 'moistureTestId')).toContain('choose M-0002');
    const other = await makeLot();
    expect(await fieldMessage(start(other.number, fromTest), 'moistureTestId')).toContain(other.number);
  });

  it('refuses what cannot be', async () => {
    const { number } = await makeLot();
    const other = await makeLot();
    expect(await fieldMessage(start('L-1900-001'), 'lot')).toContain('no lot');
    expect(await fieldMessage(start(number, { targetMoisturePercent: '12' }), 'targetMoisturePercent')).toContain(
      'less than that',
    );
    expect(await fieldMessage(start(number, { weightG: '100' }), 'weightG')).toContain('more than empty');
    expect(await fieldMessage(start(number, { startMoisturePercent: '' }), 'startMoisturePercent')).toContain(
      'moisture now',
    );
    expect(await fieldMessage(start(number, { moistureTestId: 'x' }), 'startMoisturePercent')).toContain(
      'which of the two',
    );
    expect(await fieldMessage(start(number, { at: '2026-11-27T09:00' }), 'at')).toContain('lies ahead');
    expect(await fieldMessage(start(number, { at: '2026-09-01T09:00' }), 'at')).toContain('harvested on');
    expect(await fieldMessage(start(number, { at: 'yesterday' }), 'at')).toContain('time of day');
    expect(await fieldMessage(start(number, { packetId: other.packetId }), 'packetId')).toContain(number);
    expect(await fieldMessage(start(number, { storeId: 'x' }), 'storeId')).toContain('no longer there');
    expect((await refusal(startDryingRun(VISITOR, {}))).code).toBe('not-allowed');
    expect(countRows('DryingRun')).toBe(0);
  });
});

describe('recordDryingWeighing', () => {
  it('counts from now when no time is written', async () => {
    const { runId, run } = await makeRun();
    const before = nowEpochSeconds();
    await weigh(runId, '590');
    const [, last] = (await getDryingRun(run))?.weighings ?? [];
    expect(last?.atEpochSeconds).toBeGreaterThanOrEqual(before);
    expect(localDate(last?.atEpochSeconds ?? 0)).toBe('2026-11-25');
  });

  it('gives the same picture in whatever order weighings are written down', async () => {
    const rows = [
      ['593.9', '2026-11-20T18:00'],
      ['585.9', '2026-11-21T09:00'],
      ['577.4', '2026-11-22T09:00'],
      ['574.9', '2026-11-22T18:00'],
    ] as const;
    const [first, second] = [await makeRun(), await makeRun()];
    for (const [weight, at] of rows) await weigh(first.runId, weight, at);
    for (const [weight, at] of rows.toReversed()) await weigh(second.runId, weight, at);
    const [one, other] = [await getDryingRun(first.run), await getDryingRun(second.run)];
    expect(one?.progress).toEqual(other?.progress);
    expect(one?.picture).toEqual(other?.picture);
    expect(one?.progress).toMatchObject({ ok: true, verdict: { kind: 'on-the-way' } });
  });

  it('asks about a weight that this seed cannot have, and takes it when somebody says that it is right', async () => {
    const { runId, run } = await makeRun();
    const slip = await refusal(weigh(runId, '59'));
    expect(slip.fieldErrors).toEqual({ weightG: expect.stringContaining('empty tray') });
    // dry matter: 440 g, with the tray 540 g
    expect((await refusal(weigh(runId, '539.9'))).fieldErrors).toMatchObject({
      weightG: expect.stringContaining('dry matter'),
      weightAnyway: expect.stringContaining('moisture at the start is wrong'),
    });
    expect(await fieldMessage(weigh(runId, '651'), 'weightG')).toContain('tenth more');
    await weigh(runId, '540', '2026-11-21T09:00');
    await weigh(runId, '539', '2026-11-22T09:00', { weightAnyway: 'on' });
    expect(await weights(run)).toEqual([600, 540, 539]);
    expect((await getDryingRun(run))?.progress).toMatchObject({ ok: false, reason: 'lighter-than-its-dry-matter' });
  });

  it('refuses a time ahead, before the start, or at which there is a weighing', async () => {
    const { runId } = await makeRun();
    await weigh(runId, '590', '2026-11-21T09:00');
    expect(await fieldMessage(weigh(runId, '585', '2026-11-26T09:00'), 'at')).toContain('lies ahead');
    expect(await fieldMessage(weigh(runId, '585', '2026-11-20T08:59'), 'at')).toContain('2026-11-20 09:00');
    expect(await fieldMessage(weigh(runId, '585', '2026-11-21T09:00'), 'at')).toContain('a weighing at this time');
    expect((await refusal(weigh('no-such-run', '585'))).code).toBe('not-found');
  });

  it('two who weigh at once both count; the same weight sent twice counts once', async () => {
    const { runId, run } = await makeRun();
    const both = await Promise.allSettled([weigh(runId, '590'), weigh(runId, '589.8')]);
    expect(both.map(({ status }) => status)).toEqual(['fulfilled', 'fulfilled']);
    const twice = await Promise.allSettled([weigh(runId, '588'), weigh(runId, '588')]);
    expect(twice.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    const weighings = (await getDryingRun(run))?.weighings ?? [];
    expect(weighings.map(({ weightG }) => weightG).sort()).toEqual([588, 589.8, 590, 600]);
    expect(new Set(weighings.map(({ atEpochSeconds }) => atEpochSeconds)).size).toBe(4);
  });
});

describe('correctDryingWeighing', () => {
  const weighingIds = async (run: string) => (await getDryingRun(run))?.weighings.map(({ id }) => id) ?? [];

  it('takes the place of the weighing it names, once, and keeps its time', async () => {
    const { runId, run } = await makeRun();
    await weigh(runId, '583.9', '2026-11-20T18:00');
    const [, wrong] = await weighingIds(run);
    await correct(wrong ?? '', '593.9');
    expect((await getDryingRun(run))?.weighings[1]).toMatchObject({ weightG: 593.9, hours: 18 });
    expect((await refusal(correct(wrong ?? '', '590'))).code).toBe('conflict');
    expect(countRows('DryingWeighing')).toBe(3);
    expect(lastAuditLine()?.summary).toContain('593.9 g at 2026-11-20 18:00 in place of 583.9 g');
    expect(() => connections().bulk.exec('DELETE FROM "DryingWeighing"')).toThrow('append-only');
  });

  it('of the first weighing moves the weight to stop at, and it stays the first', async () => {
    const { runId, run } = await makeRun();
    await weigh(runId, '593.9', '2026-11-20T18:00');
    const [first, second] = await weighingIds(run);
    await correct(first ?? '', '610');
    expect((await getDryingRun(run))?.progress).toMatchObject({ targetWeightG: expect.closeTo((510 * 88) / 93, 9) });
    const [again] = await weighingIds(run);
    expect(await fieldMessage(correct(again ?? '', '610', { at: '2026-11-20T19:00' }), 'at')).toContain(
      'begins with this',
    );
    expect(await fieldMessage(correct(second ?? '', '593.9', { at: '2026-11-20T08:00' }), 'at')).toContain(
      'write a later time',
    );
    expect(await fieldMessage(correct(second ?? '', '593.9'), 'weightG')).toContain('written already');
    expect((await refusal(correct('no-such-weighing', '500'))).code).toBe('not-found');
  });
});

describe('endDryingRun', () => {
  const end = (runId: string, on?: string) => endDryingRun(VOLUNTEER, { runId, on });

  it('ends a run once, says what was reached, and takes no weighing any more', async () => {
    const { runId, run } = await makeRun();
    await weigh(runId, '573', '2026-11-22T09:00');
    expect(await fieldMessage(end(runId, '2026-11-21'), 'on')).toContain('weighed on 2026-11-22');
    const outcomes = await Promise.allSettled([end(runId, '2026-11-22'), end(runId, '2026-11-22')]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(await getDryingRun(run)).toMatchObject({ endedOn: '2026-11-22' });
    expect(lastAuditLine()?.summary).toMatch(/^Ended drying run D-0001 of lot L-2026-001 on 2026-11-22 at 7.0 %$/);
    expect(await fieldMessage(weigh(runId, '572'), 'weightG')).toContain('ended on 2026-11-22');
  });

  it('running runs and ended ones are told apart', async () => {
    const [first, second] = [await makeRun(), await makeRun()];
    await end(first.runId);
    expect((await findDryingRuns({ ended: false, page: 1 })).rows.map(({ number }) => number)).toEqual([second.run]);
    const ended = await findDryingRuns({ ended: true, page: 9 });
    expect(ended).toMatchObject({ total: 1, page: 1, rows: [{ number: first.run, endedOn: '2026-11-25' }] });
  });
});
