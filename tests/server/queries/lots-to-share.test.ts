import { beforeAll, describe, expect, it } from 'vitest';
import { lotsToShareQuery, requestListQuery } from '@/lib/schemas/sharing-query';
import { addRequestLine } from '@/lib/server/commands/add-request-line';
import { createRequest } from '@/lib/server/commands/create-request';
import { sendRequest } from '@/lib/server/commands/send-request';
import { splitPacket } from '@/lib/server/commands/split-packet';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { connections, reader } from '@/lib/server/database/connections';
import { regrowingNeeds } from '@/lib/server/judging/regrowing-needs';
import { lastGerminations } from '@/lib/server/queries/last-germination';
import { findLotsToShare, lotsToShareSql } from '@/lib/server/queries/lots-to-share';
import { findRequests, findShared, getPackList, getRequest } from '@/lib/server/queries/sharing-requests';
import { makeStore } from '@/tests/support/create-store';
import { createLotWithPacket, recordTest } from '@/tests/support/create-tested-lot';
import { STEWARD, VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

const ASKED = { recipient: 'The school garden', recipientKind: 'group' };
const TODAY = '2026-11-25';
const lots: Record<string, { lotId: string; packetId: string; accessionId: string }> = {};
let requestId = '';

const query = (overrides: object = {}) => lotsToShareQuery.parse(overrides);
const found = async (overrides: object = {}) => (await findLotsToShare(query(overrides), requestId)).rows;
const idOf = (number: string) => (lots[number] as { lotId: string }).lotId;

async function addLot(number: string, overrides: object = {}) {
  lots[number] = await createLotWithPacket({ number, accessionName: `Leek ${number}`, seeds: 3000, ...overrides });
  await recordTest({ lot: number });
}

beforeAll(async () => {
  await addLot('L-2020-001');
  await addLot('L-2020-002', { treatment: 'thiram' });
  await addLot('L-2020-003', { seeds: 300 });
  await addLot('L-2020-004');
  connections()
    .bulk.prepare(`UPDATE "Accession" SET "sharing" = 'not', "sharingTerms" = 'Kept for the family' WHERE "id" = ?`)
    .run(lots['L-2020-004']?.accessionId);
  await addLot('L-2020-005', { seeds: 1000 });
  const partner = await makeStore();
  await splitPacket(VOLUNTEER, {
    packetId: lots['L-2020-005']?.packetId,
    amount: '700',
    unit: 'seeds',
    storeId: partner.id,
    container: 'foil-pouch',
    moisturePercent: '6',
    role: 'safety-duplicate',
  });
  requestId = (await createRequest(VOLUNTEER, ASKED)).id;
});

describe('findLotsToShare', () => {
  it('lists lots with seed to spare, not those that may not be shared or hold too little', async () => {
    expect((await found()).map((lot) => lot.lotNumber)).toEqual(['L-2020-001', 'L-2020-002', 'L-2020-005']);
  });

  it('says how much can go, by what two sowings and the tests take', async () => {
    const [first] = await found();
    const kept =
      200 + (regrowingNeeds(connections().rows, [idOf('L-2020-001')], TODAY).get(idOf('L-2020-001')) as number);
    expect(first?.toSpare).toEqual({ ok: true, spare: 3000 - kept, kept });
    expect(first).toMatchObject({ active: 3000, treatment: null, sharing: 'may', onList: false, promised: 0 });
  });

  it('keeps for next season what the judgement says, and no less for the season after', async () => {
    const id = idOf('L-2020-001');
    const judged = await reader().lotJudgement.findUniqueOrThrow({ where: { lotId: id } });
    const next = judged.seedsNeeded as number;
    const both = regrowingNeeds(connections().rows, [id], TODAY).get(id) as number;
    expect(both).toBeGreaterThanOrEqual(2 * next);
    expect(both).toBeLessThan(3 * next);
  });

  it('counts nothing that lies in a safety duplicate', async () => {
    const duplicated = (await found({ q: 'L-2020-005' }))[0];
    expect(duplicated?.active).toBe(300);
    expect(duplicated?.toSpare).toMatchObject({ ok: true, spare: 0 });
  });

  it('shows all lots with what is to be heeded when asked to, and finds by words', async () => {
    const all = await found({ show: 'all' });
    expect(all.map((lot) => lot.lotNumber)).toHaveLength(5);
    expect(all[1]).toMatchObject({ treatment: 'thiram' });
    expect(all[3]).toMatchObject({ sharing: 'not', sharingTerms: 'Kept for the family' });
    expect((await found({ q: 'leek 002' })).map((lot) => lot.lotNumber)).toEqual(['L-2020-002']);
    expect(await found({ q: 'turnip' })).toEqual([]);
  });

  it('gives the last test that stands, not one that was corrected', async () => {
    await recordTest({ lot: 'L-2020-001', setOn: '2026-06-01', finishedOn: '2026-06-15' });
    const last = await reader().germinationTest.findFirstOrThrow({
      where: { lotId: idOf('L-2020-001') },
      orderBy: { finishedOn: 'desc' },
    });
    const counts = [{ seeds: '50', normal: '30', abnormal: '3', hard: '', fresh: '4', dead: '' }];
    await recordTest({
      lot: 'L-2020-001',
      setOn: '2026-06-01',
      // The slip was in the day, too: what stands is the older date.
      finishedOn: '2026-06-10',
      replicates: counts,
      correctsId: last.id,
      correctionReason: 'misread',
    });
    const germination = { finishedOn: '2026-06-10', seeds: 50, normal: 30, alive: 34 };
    expect((await lastGerminations([idOf('L-2020-001')])).get(idOf('L-2020-001'))).toEqual(germination);
    expect((await found())[0]?.germination).toEqual(germination);
  });

  it('tells what is on this list, and what other open requests want', async () => {
    const other = await createRequest(VOLUNTEER, { ...ASKED, recipient: 'A neighbour' });
    await addRequestLine(VOLUNTEER, { requestId: other.id, lot: 'L-2020-001', seeds: '70' });
    await addRequestLine(VOLUNTEER, { requestId, lot: 'L-2020-002' });
    const [first, second] = await found();
    expect(first).toMatchObject({ promised: 70, onList: false });
    expect(second).toMatchObject({ promised: 0, onList: true });
  });

  it('reads its page along an index, without sorting the collection', () => {
    const sql = lotsToShareSql(query(), 0);
    const plan = connections()
      .bulk.prepare(`EXPLAIN QUERY PLAN ${sql.sql}`)
      .all(...(sql.values as unknown[])) as { detail: string }[];
    const text = plan.map((step) => step.detail).join('; ');
    expect(text).toContain('USING INDEX LotJudgement_accessionName_lotNumber_idx');
    expect(text).not.toContain('TEMP B-TREE');
  });
});

describe('requests', () => {
  it('are listed open ones first, with how much they ask for, and found by name, number and state', async () => {
    const sent = await createRequest(VOLUNTEER, { ...ASKED, recipient: 'The growers', askedOn: '2026-11-20' });
    await addRequestLine(VOLUNTEER, { requestId: sent.id, lot: 'L-2020-001', seeds: '40' });
    await sendRequest(STEWARD, { requestId: sent.id, version: 2, measured: 'counted' });
    const list = async (input: object = {}) =>
      (await findRequests(requestListQuery.parse(input))).rows.map((row) => [row.number, row.status, row.seeds]);
    expect(await list()).toEqual([
      ['R-0002', 'open', 70],
      ['R-0001', 'open', 50],
      ['R-0003', 'sent', 40],
    ]);
    expect(await list({ state: 'sent' })).toEqual([['R-0003', 'sent', 40]]);
    expect(await list({ q: 'growers' })).toEqual([['R-0003', 'sent', 40]]);
    expect(await list({ q: '0001' })).toEqual([['R-0001', 'open', 50]]);
    expect(await list({ q: '%' })).toEqual([]);
    expect(await list({ state: 'lost', page: '-1' })).toHaveLength(3);
  });

  it('are read with their lines; one that is not there is nothing', async () => {
    expect((await getRequest('R-0003'))?.lines).toMatchObject([{ seeds: 40, movement: { seeds: 40 } }]);
    expect(await getRequest('R-9999')).toBeNull();
    expect((await getPackList('R-0003'))?.germinations.get(idOf('L-2020-001'))).toMatchObject({ normal: 30 });
    expect(await getPackList('R-9999')).toBeNull();
  });

  it('are summed up by lot with what was taken out by hand, less what was taken back', async () => {
    const packetId = lots['L-2020-002']?.packetId;
    const take = { packetId, unit: 'seeds', reason: 'sharing', on: '2026-11-01' };
    await takeSeedOut(VOLUNTEER, { ...take, amount: '25', note: 'Seed swap in the hall' });
    await takeSeedOut(VOLUNTEER, { ...take, amount: '99' });
    const { id } = await reader().movement.findFirstOrThrow({ where: { seeds: -99 } });
    await undoMovement(VOLUNTEER, { movementId: id });
    expect(await findShared([idOf('L-2020-001'), idOf('L-2020-002')])).toMatchObject({
      seeds: 65,
      latest: [
        { request: { number: 'R-0003', recipient: 'The growers' }, on: TODAY, lotNumber: 'L-2020-001', seeds: 40 },
        { request: null, note: 'Seed swap in the hall', lotNumber: 'L-2020-002', seeds: 25 },
      ],
    });
    expect(await findShared([idOf('L-2020-003')])).toEqual({ seeds: 0, latest: [] });
  });
});
