import { describe, expect, it } from 'vitest';
import { equilibriumMoisture } from '@/lib/domain/moisture/equilibrium';
import { movePacket } from '@/lib/server/commands/move-packet';
import { recordMoistureTest } from '@/lib/server/commands/record-moisture-test';
import { connections, reader } from '@/lib/server/database/connections';
import { getLotMoisture } from '@/lib/server/queries/lot-moisture';
import { getLotPage } from '@/lib/server/queries/lot-page';
import { countRows, lastAuditLine } from '@/tests/support/audit';
import { cropIdOf } from '@/tests/support/create-accession';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { VISITOR, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

/** A dish of 5 g of seed that loses so many grams. */
const dish = (lost: number) => ({ dishG: '20', dishAndFreshG: '25', dishAndDryG: String(25 - lost) });
const ovenTest = (lot: string, overrides: object = {}) => ({
  lot,
  testedOn: '2026-11-20',
  method: 'oven-low',
  dishes: [dish(0.4), dish(0.408)],
  ...overrides,
});
const record = (lot: string, overrides: object = {}) => recordMoistureTest(VOLUNTEER, ovenTest(lot, overrides));
const meter = (lot: string, moisturePercent: string, overrides: object = {}) =>
  record(lot, { method: 'meter', moisturePercent, dishes: undefined, ...overrides });
const judged = (number: string) => reader().lotJudgement.findFirstOrThrow({ where: { lotNumber: number } });
const unmeasured = (overrides: object = {}) =>
  makeLot({ moisturePercent: '', storedOn: '2024-10-05', harvestedOn: '2024-09-20', ...overrides });

describe('recordMoistureTest', () => {
  it('writes the mean of two dishes with every weight, numbered, with an audit entry', async () => {
    const { number } = await makeLot();
    expect(await record(number)).toEqual({
      number: 'M-0001',
      lotNumber: number,
      moisturePercent: expect.closeTo(8.08, 9),
    });
    const test = await reader().moistureTest.findFirstOrThrow({
      include: { dishes: { orderBy: { position: 'asc' } } },
    });
    expect(test).toMatchObject({ number: 'M-0001', method: 'oven-low', testedOn: '2026-11-20', byId: VOLUNTEER.id });
    expect(test.dishes.map(({ dishAndDryG }) => dishAndDryG)).toEqual([24.6, 24.592]);
    expect(lastAuditLine()).toMatchObject({
      command: 'record-moisture-test',
      summary: `Recorded M-0001 on lot ${number}: 8.1 % by oven`,
    });
  });

  it('keeps dishes that do not agree, and says that they are to be repeated', async () => {
    const { number } = await makeLot();
    await record(number, { dishes: [dish(0.4), dish(0.43)] });
    const [test] = (await getLotMoisture(number))?.tests ?? [];
    expect(test?.oven).toMatchObject({ verdict: 'repeat', permittedPoints: 0.2 });
    // half of the 0.6 points between them, in place of the oven's 0.2
    expect(test?.standardPoints).toBeCloseTo(0.3, 9);
  });

  it('takes the seed of the dishes out of the packet in the same step', async () => {
    const { number, packetId } = await makeLot({ cleanWeightG: '20', seedCount: '', thousandSeedWeightG: '2.5' });
    await record(number, { packetId, takeSeed: 'on' });
    const movement = await reader().movement.findFirstOrThrow({ where: { reason: 'test' } });
    expect(movement).toMatchObject({
      packetId,
      seeds: -4000,
      grams: -10,
      on: '2026-11-20',
      note: 'Moisture test M-0001',
    });
    expect((await reader().moistureTest.findFirstOrThrow()).withdrawalId).toBe(movement.id);
    expect((await judged(number)).seedsLeft).toBe(4000);
  });

  it('never takes more than the packet holds: nothing of the test stays', async () => {
    const { number, packetId } = await makeLot();
    const overdrawn = { packetId, takeSeed: 'on', amount: '1001', unit: 'seeds' };
    expect(await fieldMessage(record(number, overdrawn), 'amount')).toContain('holds about 1000 seeds');
    expect(countRows('MoistureTest')).toBe(0);
    await record(number, { ...overdrawn, amount: '1000' });
    expect((await judged(number)).seedsLeft).toBe(0);
  });

  it('works moisture out from the air over the seed by the oil of the crop', async () => {
    const { number } = await makeLot();
    const { moisturePercent } = await record(number, { method: 'air', humidityPercent: '35', temperatureC: '20' });
    const oil = await reader().cropFact.aggregate({
      where: { cropId: cropIdOf('Leek'), kind: 'oil fraction' },
      _min: { lower: true },
      _max: { upper: true },
    });
    const oilFraction = ((oil._min.lower ?? 0) + (oil._max.upper ?? 0)) / 2;
    expect(oilFraction).toBeGreaterThan(0.05);
    expect(moisturePercent).toBe(equilibriumMoisture({ relativeHumidity: 0.35, temperatureC: 20, oilFraction }));
    expect(await reader().moistureTest.findFirstOrThrow()).toMatchObject({ relativeHumidity: 0.35, temperatureC: 20 });
  });

  it('refuses what cannot be', async () => {
    const { number } = await makeLot();
    const other = await makeLot();
    expect(await fieldMessage(record('L-1900-001'), 'lot')).toContain('no lot L-1900-001');
    expect(await fieldMessage(record(number, { testedOn: '2026-09-19' }), 'testedOn')).toContain(
      'harvested on 2026-09-20',
    );
    expect(await fieldMessage(record(number, { packetId: other.packetId }), 'packetId')).toContain(number);
    expect(await fieldMessage(record(number, { dishes: [dish(0), dish(0)] }), 'dishes.0.dishAndDryG')).toContain(
      'no seed has',
    );
    const early = { packetId: (await makeLot({ storedOn: '2026-11-24' })).packetId };
    expect(await fieldMessage(record('L-2026-003', { ...early, takeSeed: 'on' }), 'packetId')).toContain(
      'filled on 2026-11-24',
    );
    expect((await refusal(recordMoistureTest(VISITOR, ovenTest(number)))).code).toBe('not-allowed');
    expect(countRows('MoistureTest')).toBe(0);
  });

  it('does not write the same test down twice, also when two people press at once', async () => {
    const { number } = await makeLot();
    const outcomes = await Promise.allSettled([record(number), record(number)]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect((await refusal(record(number))).userMessage).toContain('M-0001');
    await record(number, { testedOn: '2026-11-21' });
    expect(countRows('MoistureTest')).toBe(2);
  });
});

describe('a correction', () => {
  it('takes the place of the test it names, once, and leaves that as it was', async () => {
    const { number, packetId } = await unmeasured();
    await meter(number, '9.7', { packetId });
    const { id } = await reader().moistureTest.findFirstOrThrow();
    const correction = { packetId, correctsId: id, correctionReason: 'misread' };
    expect(await meter(number, '7.9', correction)).toMatchObject({ number: 'M-0002' });
    expect((await refusal(meter(number, '8.9', correction))).userMessage).toContain('corrected already, by M-0002');
    expect(lastAuditLine()?.summary).toBe('Corrected by M-0002. Reason: misread');
    const lot = await getLotMoisture(number);
    expect(lot?.tests.map((test) => [test.number, test.correctedByNumber])).toEqual([
      ['M-0002', null],
      ['M-0001', 'M-0002'],
    ]);
    // judged by the correction alone
    expect(lot?.packets[0]?.stay).toMatchObject({ moisturePercent: 7.9, measured: { tests: [{ number: 'M-0002' }] } });
  });

  it('cannot be undone behind its back: the tables only grow', async () => {
    const { number } = await makeLot();
    await record(number);
    const { bulk } = connections();
    expect(() => bulk.exec('UPDATE "MoistureTest" SET "moisturePercent" = 1')).toThrow('append-only');
    expect(() => bulk.exec('DELETE FROM "MoistureDish"')).toThrow('append-only');
  });
});

describe('what a test means for the forecast', () => {
  it('a sealed stay whose moisture nobody wrote is reckoned at it, from its first day', async () => {
    const { number, packetId } = await unmeasured({ seedCount: '5000' });
    const before = await judged(number);
    const assumed = (await getLotPage(number, {}))?.forecast?.ageing;
    expect(assumed).toMatchObject({ moistureAssumed: true, moistureFrom: { kind: 'assumed' } });
    await meter(number, '5.5', { packetId });
    const ageing = (await getLotPage(number, {}))?.forecast?.ageing;
    expect(ageing).toMatchObject({
      moistureAssumed: false,
      moisturePercent: 5.5,
      moistureFrom: { kind: 'measured', tests: [{ number: 'M-0001', testedOn: '2026-11-20' }] },
    });
    expect(ageing?.notes.join(' ')).toContain('M-0001');
    const after = await judged(number);
    // drier than a room leaves it: it aged less since 2024
    expect(after.viabilityMedian ?? 0).toBeGreaterThan(before.viabilityMedian ?? 1);
    expect(after.viabilityLower ?? 0).toBeGreaterThan(before.viabilityLower ?? 1);
  });

  it('a test of no packet, or of another one, changes no stay', async () => {
    const { number } = await unmeasured();
    await meter(number, '5.5');
    expect((await getLotPage(number, {}))?.forecast?.ageing.moistureFrom).toEqual({ kind: 'assumed' });
  });

  it('a written moisture stands, and a test far from it is told as a doubt about the seal', async () => {
    const { number, packetId } = await makeLot({ moisturePercent: '5.2' });
    const before = await judged(number);
    await meter(number, '7.9', { packetId });
    expect(await judged(number)).toEqual(before);
    const [packet] = (await getLotMoisture(number))?.packets ?? [];
    expect(packet?.doubt).toMatchObject({
      beforePercent: 5.2,
      before: { kind: 'written' },
      test: { number: 'M-0001' },
    });
    await meter(number, '5.4', { packetId, testedOn: '2026-11-22' });
    expect((await getLotMoisture(number))?.packets[0]?.doubt).toBeNull();
  });

  it('holds on when the sealed packet is moved, and ends when it is put into an open container', async () => {
    const { number, packetId } = await unmeasured();
    await meter(number, '5.5', { packetId, testedOn: '2026-11-01' });
    const { id: storeId } = await makeStore();
    await movePacket(VOLUNTEER, { packetId, storeId, from: '2026-11-10' });
    expect((await getLotPage(number, {}))?.forecast?.ageing).toMatchObject({
      moisturePercent: 5.5,
      moistureAssumed: false,
    });
    const room = await makeStore({ kind: 'room', targetTemperatureC: '15', targetHumidityPercent: '40' });
    await movePacket(VOLUNTEER, { packetId, storeId: room.id, container: 'paper-envelope', from: '2026-11-20' });
    expect((await getLotPage(number, {}))?.forecast?.ageing.moistureFrom).toEqual({ kind: 'air' });
  });
});
