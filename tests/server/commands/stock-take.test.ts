import { beforeEach, describe, expect, test } from 'vitest';
import { closeStockTake } from '@/lib/server/commands/close-stock-take';
import { giveUpStockTake } from '@/lib/server/commands/give-up-stock-take';
import { recordStockTakeLine } from '@/lib/server/commands/record-stock-take-line';
import { removeStockTakeLine } from '@/lib/server/commands/remove-stock-take-line';
import { saveStockTakeDecisions } from '@/lib/server/commands/save-stock-take-decisions';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { connections } from '@/lib/server/database/connections';
import { countRows, lastAuditLine } from '@/tests/support/audit';
import { makeAccession } from '@/tests/support/create-accession';
import { makeLot } from '@/tests/support/create-lot';
import { boxOf, decide, linesOf, look, startIn } from '@/tests/support/create-stock-take';
import { makeStore } from '@/tests/support/create-store';
import { heldIn, ledgerOf } from '@/tests/support/ledger';
import { STEWARD, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

let freezer: { id: string };
let box: { id: string };
let cupboard: { id: string };
/** 1000 seeds each: two packets in a box of the freezer, one in the cupboard */
let one: string;
let two: string;
let elsewhere: string;
let take: { id: string; number: string };

const close = (decisions: Record<string, string> = {}, rest: Record<string, unknown> = {}) =>
  closeStockTake(STEWARD, { stockTakeId: take.id, decisions: decide(take.id, decisions), ...rest });
const takeOut = (packetId: string, amount: string) =>
  takeSeedOut(VOLUNTEER, { packetId, amount, unit: 'seeds', reason: 'sowing' });
const latestPlace = (packetId: string) =>
  connections()
    .bulk.prepare(`SELECT "storeId" FROM "Placement" WHERE "packetId" = ? ORDER BY "from" DESC, "id" DESC LIMIT 1`)
    .pluck()
    .get(packetId);

beforeEach(async () => {
  freezer = await makeStore({ name: 'Freezer', kind: 'freezer', targetTemperatureC: '-18' });
  box = await makeStore({ name: 'Box', kind: 'freezer', targetTemperatureC: '-18', parentId: freezer.id });
  cupboard = await makeStore({ name: 'Cupboard', kind: 'room', targetTemperatureC: '16' });
  const { number: accession } = await makeAccession();
  one = (await makeLot({ accession, storeId: box.id })).packetId;
  two = (await makeLot({ accession, storeId: box.id })).packetId;
  elsewhere = (await makeLot({ accession, storeId: cupboard.id })).packetId;
  take = await startIn(freezer.id);
});

describe('starting', () => {
  test('gives a number of the year, and an audit entry', () => {
    expect(take.number).toBe('ST-2026-01');
    expect(lastAuditLine()).toMatchObject({
      entity: 'stock-take',
      entityId: take.id,
      summary: 'Started stock-take ST-2026-01 of Freezer',
    });
  });

  test('is refused while another one looks at the same packets, from inside or from outside', async () => {
    expect(await fieldMessage(startIn(box.id), 'storeId')).toContain('ST-2026-01 of Freezer is still open');
    expect(await fieldMessage(startIn(freezer.id), 'storeId')).toContain('still open');
    expect((await startIn(cupboard.id)).number).toBe('ST-2026-02');
    await giveUpStockTake(VOLUNTEER, { stockTakeId: take.id });
    take = await startIn(box.id);
    expect(await fieldMessage(startIn(freezer.id), 'storeId')).toContain('of Box is still open');
    expect(await fieldMessage(startIn('nowhere'), 'storeId')).toContain('no longer there');
  });
});

describe('a line', () => {
  test('keeps what was found beside the balance of that moment', async () => {
    await takeOut(one, '200');
    expect(await look(take.id, one, '790')).toMatchObject({ version: 1, expectedSeeds: 800, seeds: 790 });
    expect(linesOf(take.id)).toMatchObject([
      { finding: 'here', expectedSeeds: 800, seeds: 790, seedsSd: 0, grams: null },
    ]);
    expect(lastAuditLine()?.summary).toBe('ST-2026-01: P-00001 790 seeds; the ledger says 800');
  });

  test('may be a tick, a packet that is not there, or one that is empty', async () => {
    await look(take.id, one);
    await look(take.id, two, '', { finding: 'not-here' });
    await look(take.id, elsewhere, '0');
    expect(linesOf(take.id).map(({ finding, seeds }) => [finding, seeds])).toEqual([
      ['here', null],
      ['not-here', null],
      ['here', 0],
    ]);
  });

  test('in grams is turned into seeds with a spread, where something turns them', async () => {
    expect(await fieldMessage(look(take.id, one, '2.5', { unit: 'grams' }), 'amount')).toContain('count them');
    const weighed = await makeLot({ seedCount: '', cleanWeightG: '10.4', thousandSeedWeightG: '2.6', storeId: box.id });
    await look(take.id, weighed.packetId, '10.1', { unit: 'grams' });
    const [line] = linesOf(take.id);
    expect(line).toMatchObject({ expectedSeeds: 4000, seeds: 3885, grams: 10.1 });
    expect(line?.seedsSd).toBeGreaterThan(115);
  });

  test('is written anew by whoever has seen it; its difference then counts from then', async () => {
    await look(take.id, one);
    await takeOut(one, '100');
    await look(take.id, one, '900', { version: 1 });
    expect(linesOf(take.id)).toMatchObject([{ version: 2, expectedSeeds: 900, seeds: 900 }]);
  });

  test('by somebody who has not seen it is refused, with what the other one wrote', async () => {
    await look(take.id, one, '980');
    const refused = await refusal(look(take.id, one, '970'));
    expect(refused.userMessage).toContain('wrote down P-00001 meanwhile: 980 seeds');
    expect(refused).toMatchObject({ code: 'conflict', currentVersion: 1 });
    await look(take.id, one, '970', { version: 1 });
    await removeStockTakeLine(VOLUNTEER, { stockTakeId: take.id, packetId: one, version: 2 });
    expect(await refusal(look(take.id, one, '960', { version: 2 }))).toMatchObject({ currentVersion: 0 });
  });

  test('by two phones at the same moment is kept once, and the other one is told', async () => {
    const outcomes = await Promise.allSettled([look(take.id, one, '980'), look(take.id, one, '970')]);
    expect(outcomes.map(({ status }) => status)).toEqual(['fulfilled', 'rejected']);
    expect(linesOf(take.id)).toHaveLength(1);
  });

  test('by many at once of many packets loses none', async () => {
    const { number: accession } = await makeAccession();
    const packets: string[] = [];
    for (let index = 0; index < 12; index += 1) {
      packets.push((await makeLot({ accession, storeId: box.id })).packetId);
    }
    await Promise.all(packets.map((packetId, index) => look(take.id, packetId, String(index))));
    expect(
      linesOf(take.id)
        .map(({ seeds }) => seeds)
        .sort((a, b) => (a ?? 0) - (b ?? 0)),
    ).toEqual(packets.map((_, index) => index));
  });

  test('is undone only as it was seen', async () => {
    await look(take.id, one, '980');
    await look(take.id, one, '970', { version: 1 });
    const undo = (version: number) => removeStockTakeLine(VOLUNTEER, { stockTakeId: take.id, packetId: one, version });
    expect((await refusal(undo(1))).userMessage).toContain('written down anew');
    await undo(2);
    expect(linesOf(take.id)).toEqual([]);
    expect((await refusal(undo(2))).code).toBe('not-found');
  });

  test('changes nothing in the ledger', async () => {
    await look(take.id, one, '1');
    expect([heldIn(one), countRows('Movement')]).toEqual([1000, 3]);
  });
});

describe('closing', () => {
  test('corrects one short and one over, and says so in the ledger and the audit', async () => {
    await look(take.id, one, '963');
    await look(take.id, two, '1012');
    await close({ [one]: 'correct', [two]: 'correct' });
    expect([heldIn(one), heldIn(two)]).toEqual([963, 1012]);
    expect(ledgerOf(one).at(-1)).toMatchObject({
      reason: 'count',
      seeds: -37,
      seedsSd: 0,
      grams: null,
      stockTakeId: take.id,
      note: 'ST-2026-01: counted 963, ledger 1000',
    });
    expect(lastAuditLine()?.summary).toBe(
      'Closed stock-take ST-2026-01 of Freezer: 2 packets looked at, 2 corrected, 0 written off, 0 placed here',
    );
    const stored = await connections().reader.stockTake.findUnique({ where: { id: take.id } });
    expect(stored).toMatchObject({ status: 'closed', closedOn: '2026-11-25' });
  });

  test('writes a count of 0 for what was counted as expected, and nothing for what was ticked', async () => {
    await look(take.id, one, '1000');
    await look(take.id, two);
    await close();
    expect(ledgerOf(one).at(-1)).toMatchObject({ reason: 'count', seeds: 0, stockTakeId: take.id });
    expect(ledgerOf(two)).toHaveLength(1);
  });

  test('does not swallow what was taken out between counting and closing', async () => {
    await look(take.id, one, '963');
    await look(take.id, two);
    await takeOut(one, '100');
    await close({ [one]: 'correct' });
    expect(heldIn(one)).toBe(863);
    expect(ledgerOf(one).map(({ seeds }) => seeds)).toEqual([1000, -100, -37]);
  });

  test('never goes below no seed: refused beside that line, and nothing of the others is written', async () => {
    await look(take.id, one, '30');
    await look(take.id, two, '990');
    await takeOut(one, '980');
    const refused = await refusal(close({ [one]: 'correct', [two]: 'correct' }));
    expect(refused.fieldErrors[boxOf(take.id, one)]).toContain(
      '980 seeds were taken out of it, so 970 cannot be missing',
    );
    expect([heldIn(one), heldIn(two)]).toEqual([20, 1000]);
    expect(linesOf(take.id).map(({ decision }) => decision)).toEqual([null, null]);
    // looked at again, it adds up
    await look(take.id, one, '20', { version: 1 });
    await close({ [two]: 'correct' });
    expect([heldIn(one), heldIn(two)]).toEqual([20, 990]);
  });

  test('writes a missing packet off, and what was short as a loss that is known afresh', async () => {
    await look(take.id, one, '', { finding: 'not-here' });
    await look(take.id, two, '400');
    await close({ [one]: 'loss', [two]: 'loss' });
    expect([heldIn(one), heldIn(two)]).toEqual([0, 400]);
    expect(ledgerOf(one).at(-1)).toMatchObject({ reason: 'loss', seeds: -1000, note: 'ST-2026-01: not there' });
    expect(ledgerOf(two).slice(1)).toMatchObject([
      { reason: 'loss', seeds: -600 },
      { reason: 'count', seeds: 0 },
    ]);
  });

  test('leaves what is to be left', async () => {
    await look(take.id, one, '', { finding: 'not-here' });
    await look(take.id, two, '400');
    await close({ [one]: 'leave', [two]: 'leave' });
    expect([heldIn(one), heldIn(two), countRows('Movement')]).toEqual([1000, 1000, 3]);
  });

  test('places a packet here that belongs elsewhere, with its count', async () => {
    await look(take.id, one);
    await look(take.id, two);
    await look(take.id, elsewhere, '995');
    await close({ [elsewhere]: 'move-here' });
    expect(latestPlace(elsewhere)).toBe(freezer.id);
    expect(heldIn(elsewhere)).toBe(995);
    expect(latestPlace(one)).toBe(box.id);
  });

  test('needs a decision for every difference, and takes only one that fits', async () => {
    await look(take.id, one, '963');
    await look(take.id, two, '1012');
    const refused = await refusal(close({ [one]: '', [two]: 'loss' }));
    expect(refused.fieldErrors).toEqual({
      [boxOf(take.id, one)]: 'Choose what to do about this difference.',
      [boxOf(take.id, two)]: 'Choose what to do about this difference.',
    });
    // counted after the review was opened: the form does not know of it
    expect((await refusal(close({ [one]: 'correct' }))).userMessage).toContain('P-00002');
  });

  test('is refused beside a line that was looked at again since the review was opened', async () => {
    await look(take.id, one, '963');
    await look(take.id, two);
    const reviewed = decide(take.id, { [one]: 'correct' });
    await look(take.id, one, '998', { version: 1 });
    const refused = await refusal(closeStockTake(STEWARD, { stockTakeId: take.id, decisions: reviewed }));
    expect(refused.fieldErrors[boxOf(take.id, one)]).toContain('looked at again');
    expect(heldIn(one)).toBe(1000);
  });

  test('with packets that nobody looked at wants that to be said', async () => {
    await look(take.id, one);
    expect(await fieldMessage(close(), 'closeUnfinished')).toContain('1 packet was not looked at');
    await close({}, { closeUnfinished: 'on' });
    expect(heldIn(two)).toBe(1000);
  });

  test('is done once, and ends all entering', async () => {
    await look(take.id, one);
    await look(take.id, two);
    const outcomes = await Promise.allSettled([close(), close()]);
    expect(outcomes.map(({ status }) => status)).toEqual(['fulfilled', 'rejected']);
    expect((await refusal(look(take.id, elsewhere))).userMessage).toContain('was closed meanwhile');
    const undo = removeStockTakeLine(VOLUNTEER, { stockTakeId: take.id, packetId: one, version: 1 });
    expect((await refusal(undo)).code).toBe('conflict');
    expect((await refusal(giveUpStockTake(STEWARD, { stockTakeId: take.id }))).code).toBe('conflict');
    expect(() => connections().bulk.exec(`UPDATE "StockTakeLine" SET "seeds" = 1`)).toThrow('stock-take settled');
  });

  test('carries what is unsure of a weighed count, and of what was weighed out since', async () => {
    const { packetId } = await makeLot({
      seedCount: '',
      cleanWeightG: '10.4',
      thousandSeedWeightG: '2.6',
      storeId: box.id,
    });
    await look(take.id, packetId, '10.1', { unit: 'grams' });
    await takeSeedOut(VOLUNTEER, { packetId, amount: '2.6', unit: 'grams', reason: 'sowing' });
    await close({ [packetId]: 'correct' }, { closeUnfinished: 'on' });
    const [, out, count] = ledgerOf(packetId);
    expect(count).toMatchObject({
      reason: 'count',
      seeds: -115,
      note: 'ST-2026-01: counted 3885, ledger 4000; weighed 10.1 g',
    });
    expect(count?.seedsSd).toBeCloseTo(Math.hypot(linesOf(take.id)[0]?.seedsSd ?? 0, out?.seedsSd ?? 0), 9);
  });

  test('can be taken back line by line', async () => {
    await look(take.id, one, '963');
    await look(take.id, two);
    await close({ [one]: 'correct' });
    await undoMovement(VOLUNTEER, { movementId: ledgerOf(one).at(-1)?.id });
    expect(heldIn(one)).toBe(1000);
  });
});

describe('decisions saved for later', () => {
  test('stay with their lines until the packet is looked at again', async () => {
    await look(take.id, one, '963');
    await look(take.id, two, '1012');
    const decisions = decide(take.id, { [one]: 'loss', [two]: '' });
    await saveStockTakeDecisions(STEWARD, { stockTakeId: take.id, decisions });
    expect(linesOf(take.id).map(({ decision }) => decision)).toEqual(['loss', null]);
    await look(take.id, one, '970', { version: 1 });
    expect(linesOf(take.id).map(({ decision }) => decision)).toEqual([null, null]);
    expect(heldIn(one)).toBe(1000);
  });
});

describe('giving up', () => {
  test('is for who started it and for stewards, and changes nothing', async () => {
    await look(take.id, one, '1');
    const other = { ...VOLUNTEER, id: 'another-volunteer' };
    expect((await refusal(giveUpStockTake(other, { stockTakeId: take.id }))).code).toBe('not-allowed');
    await giveUpStockTake(STEWARD, { stockTakeId: take.id });
    expect(heldIn(one)).toBe(1000);
    expect((await refusal(look(take.id, two))).userMessage).toContain('given up');
  });
});

test('counting is for volunteers, deciding and closing for stewards', async () => {
  await look(take.id, one);
  const input = { stockTakeId: take.id, decisions: {}, closeUnfinished: 'on' };
  expect((await refusal(closeStockTake(VOLUNTEER, input))).code).toBe('not-allowed');
  expect((await refusal(saveStockTakeDecisions(VOLUNTEER, input))).code).toBe('not-allowed');
  const visitor = { ...VOLUNTEER, role: 'visitor' as const };
  const line = { stockTakeId: take.id, packetId: two, finding: 'here', version: 0 };
  expect((await refusal(recordStockTakeLine(visitor, line))).code).toBe('not-allowed');
});
