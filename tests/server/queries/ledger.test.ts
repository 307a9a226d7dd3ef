import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, test } from 'vitest';
import { ledgerQuery } from '@/lib/schemas/ledger-query';
import { movePacket } from '@/lib/server/commands/move-packet';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { newId } from '@/lib/server/new-id';
import { findLedger } from '@/lib/server/queries/ledger';
import { ledgerFile } from '@/lib/server/queries/ledger-file';
import { getLedgerScope } from '@/lib/server/queries/ledger-scope';
import { getLotBalance, getPacketLedgers } from '@/lib/server/queries/packet-ledgers';
import { cropIdOf, makeAccession } from '@/tests/support/create-accession';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { ledgerOf, writeLines } from '@/tests/support/ledger';
import { VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

let leek: Awaited<ReturnType<typeof makeLot>>;
let kale: Awaited<ReturnType<typeof makeLot>>;
let freezer: { id: string };
let box: { id: string };

const ask = (asked: Record<string, unknown> = {}) => findLedger(ledgerQuery.parse(asked));
const seedsOf = async (asked: Record<string, unknown>) => (await ask(asked)).rows.map(({ seeds }) => seeds);
const take = (packetId: string, amount: string, rest: Record<string, unknown> = {}) =>
  takeSeedOut(VOLUNTEER, { packetId, amount, unit: 'seeds', reason: 'sowing', ...rest });

beforeAll(async () => {
  freezer = await makeStore({ name: 'Freezer', kind: 'freezer', targetTemperatureC: '-18' });
  box = await makeStore({ name: 'Box 1', kind: 'freezer', targetTemperatureC: '-18', parentId: freezer.id });
  leek = await makeLot({ seedCount: '', cleanWeightG: '10.4', thousandSeedWeightG: '2.6' });
  const accession = await makeAccession({ name: 'Ness Kale', cropId: cropIdOf('Kale') });
  kale = await makeLot({ accession: accession.number, seedCount: '700' });
  await take(leek.packetId, '1.3', { unit: 'grams', on: '2026-10-20', note: '=for the =school garden' });
  await take(leek.packetId, '30', { reason: 'loss', on: '2026-11-10' });
  await undoMovement(VOLUNTEER, { movementId: ledgerOf(leek.packetId).at(-1)?.id });
  await take(kale.packetId, '50', { on: '2026-10-08' });
  await movePacket(VOLUNTEER, {
    packetId: kale.packetId,
    storeId: box.id,
    container: 'foil-pouch',
    moisturePercent: '6',
    from: '2026-10-15',
  });
  await take(kale.packetId, '20', { on: '2026-11-12' });
});

describe('the ledger of the bank', () => {
  test('gives every line, newest day first, and what they add up to', async () => {
    const list = await ask();
    expect(list.rows.map(({ on, seeds }) => [on, seeds])).toEqual([
      ['2026-11-25', 30],
      ['2026-11-12', -20],
      ['2026-11-10', -30],
      ['2026-10-20', -500],
      ['2026-10-08', -50],
      ['2026-10-05', 700],
      ['2026-10-05', 4000],
    ]);
    expect(list).toMatchObject({ total: 7, seedsIn: 4730, seedsOut: 600, page: 1, pages: 1 });
  });

  test('a counter-entry says what it takes back, and the line that it was taken back', async () => {
    const [counter, , lost] = (await ask()).rows;
    expect(counter?.corrects).toEqual({ on: '2026-11-10', reason: 'loss', seeds: -30 });
    expect(lost).toMatchObject({ takenBackOn: '2026-11-25', mayBeTakenBack: false });
    expect(counter?.mayBeTakenBack).toBe(false);
  });

  test.each([
    [{ reason: 'sowing' }, [-20, -500, -50]],
    [{ from: '2026-10-08', to: '2026-10-20' }, [-500, -50]],
    [{ reason: 'sowing', from: '2026-11-01' }, [-20]],
    [{ q: 'ness kale' }, [-20, -50, 700]],
    [{ q: 'p-00001' }, [30, -30, -500, 4000]],
    [{ q: '%' }, []],
    [{ person: 'nobody' }, []],
    [{ person: 'test-volunteer', reason: 'deposit' }, [700, 4000]],
  ])('narrowed to %j', async (asked, seeds) => expect(await seedsOf(asked)).toEqual(seeds));

  test('narrowed to a crop; the sums are those of the lines found', async () => {
    expect(await seedsOf({ crop: cropIdOf('Kale') })).toEqual([-20, -50, 700]);
    expect(await ask({ crop: cropIdOf('Kale') })).toMatchObject({ seedsIn: 700, seedsOut: 70 });
  });

  test('narrowed to a store: where the packet lay on the day, in it or in a box inside it', async () => {
    expect(await seedsOf({ store: freezer.id })).toEqual([-20]);
    expect(await seedsOf({ store: box.id })).toEqual([-20]);
  });

  test('what cannot be read in the address counts as not said', async () => {
    expect((await ask({ reason: 'theft', from: '2026-13-01', page: '-4', q: ['a', 'b'] })).total).toBe(
      (await ask({ q: 'a' })).total,
    );
  });

  test('of a lot and of an accession', async () => {
    const ofLot = await getLedgerScope({ lot: kale.number });
    expect((await findLedger(ledgerQuery.parse({}), ofLot ?? {})).rows.map(({ seeds }) => seeds)).toEqual([
      -20, -50, 700,
    ]);
    const ofAccession = await getLedgerScope({ accession: 'A-0001' });
    expect((await findLedger(ledgerQuery.parse({}), ofAccession ?? {})).total).toBe(4);
    expect(await getLedgerScope({ lot: 'L-none' })).toBeNull();
  });
});

describe('ledgers of packets', () => {
  test('run on from line to line as they were written, and end with the balance and its band', async () => {
    const { lines, held } = (await getPacketLedgers([leek.packetId, kale.packetId])).get(leek.packetId) ?? {};
    expect(lines?.map(({ seeds, balance }) => [seeds, balance])).toEqual([
      [4000, 4000],
      [-500, 3500],
      [-30, 3470],
      [30, 3500],
    ]);
    expect(held?.seeds).toBe(3500);
    // 3 % of 3500, single weighings besides: about 105 x 1.645 to either side
    expect(held?.lower).toBeGreaterThan(3500 - 200);
    expect(held?.lower).toBeLessThan(3500 - 170);
    expect(await getLotBalance({ id: leek.lotId, thousandSeedWeightG: 2.6 })).toEqual(held);
  });

  test('of counted seed are known to the seed', async () => {
    const ledger = (await getPacketLedgers([kale.packetId])).get(kale.packetId);
    expect(ledger?.held).toMatchObject({ seeds: 630, lower: 630, upper: 630 });
  });
});

describe('the ledger as a file', () => {
  async function fileOf(asked: Record<string, unknown> = {}) {
    let text = '';
    for await (const piece of ledgerFile(ledgerQuery.parse(asked))) text += piece;
    return parse(text, { columns: true, bom: true }) as Record<string, string>[];
  }

  test('holds the lines found, with the store of that day and what was taken back', async () => {
    const rows = await fileOf({ q: 'ness kale' });
    expect(rows.map((row) => [row.day, row.seeds, row['store on that day']])).toEqual([
      ['2026-11-12', '-20', 'Box 1'],
      ['2026-10-08', '-50', expect.stringMatching(/^Fridge/)],
      ['2026-10-05', '700', expect.stringMatching(/^Fridge/)],
    ]);
    const [counter] = await fileOf({ reason: 'correction' });
    expect(counter).toMatchObject({ reason: 'taken back', seeds: '30', 'takes back the line of': '2026-11-10' });
  });

  test('a note that looks like a formula is text', async () => {
    const [row] = await fileOf({ reason: 'sowing', q: 'P-00001' });
    expect(row?.note).toBe("'=for the =school garden");
    expect(row?.grams).toBe('-1.3');
  });

  test('goes on over pieces without losing or repeating a line', async () => {
    writeLines(
      ...Array.from({ length: 4100 }, (_, index) => ({
        id: newId(),
        packetId: kale.packetId,
        reason: 'count',
        seeds: 0,
        on: `2026-11-${String((index % 3) + 15).padStart(2, '0')}`,
        note: `line ${index}`,
      })),
    );
    const rows = await fileOf({ reason: 'count' });
    expect(rows).toHaveLength(4100);
    expect(new Set(rows.map((row) => row.note)).size).toBe(4100);
    expect(rows[0]?.reason).toBe('counted, as expected');
    const second = await ask({ reason: 'count', page: 2 });
    expect(second).toMatchObject({ total: 4100, page: 2, pages: 82 });
    expect(second.rows).toHaveLength(50);
  });
});
