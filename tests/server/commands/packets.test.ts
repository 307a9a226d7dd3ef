import { describe, expect, it } from 'vitest';
import { movePacket } from '@/lib/server/commands/move-packet';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { connections } from '@/lib/server/database/connections';
import { countRows, lastAuditLine } from '@/tests/support/audit';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { VISITOR, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

interface MovementRow {
  id: string;
  reason: string;
  seeds: number;
  grams: number | null;
  correctsId: string | null;
}

const ledger = (packetId: string) =>
  connections()
    .bulk.prepare(`SELECT * FROM "Movement" WHERE "packetId" = ? ORDER BY "id"`)
    .all(packetId) as MovementRow[];
const held = (packetId: string) => ledger(packetId).reduce((sum, movement) => sum + movement.seeds, 0);
const take = (packetId: string, amount: string, overrides: Record<string, unknown> = {}) =>
  takeSeedOut(VOLUNTEER, { packetId, amount, unit: 'seeds', reason: 'sowing', ...overrides });

describe('takeSeedOut', () => {
  it('takes counted seed out and leaves an audit entry', async () => {
    const { packetId } = await makeLot();
    expect(await take(packetId, '250')).toMatchObject({ lotNumber: 'L-2026-001', seeds: 250, seedsLeft: 750 });
    expect(ledger(packetId).at(-1)).toMatchObject({ reason: 'sowing', seeds: -250, grams: null });
    expect(lastAuditLine()).toMatchObject({
      command: 'take-seed-out',
      entity: 'packet',
      entityId: packetId,
      summary: 'Took 250 seeds out of packet P-00001 of lot L-2026-001 for sowing; 750 left',
    });
  });

  it("turns grams into seeds by the lot's thousand-seed weight", async () => {
    const { packetId } = await makeLot({ cleanWeightG: '2.5' });
    await take(packetId, '0,5', { unit: 'grams', reason: 'sharing' });
    expect(ledger(packetId).at(-1)).toMatchObject({ seeds: -200, grams: -0.5 });
  });

  it('turns grams into seeds by the estimated deposit where the lot has no thousand-seed weight of its own', async () => {
    const { packetId } = await makeLot({ seedCount: '', cleanWeightG: '10' });
    expect(await take(packetId, '2', { unit: 'grams' })).toMatchObject({ seeds: 790, seedsLeft: 3160 });
  });

  it('asks for a count where nothing turns grams into seeds', async () => {
    const { packetId } = await makeLot();
    expect(await fieldMessage(take(packetId, '2', { unit: 'grams' }), 'amount')).toContain('count them');
  });

  it('never takes more than there is, to the last seed', async () => {
    const { packetId } = await makeLot();
    expect(await fieldMessage(take(packetId, '1001'), 'amount')).toBe('This packet holds about 1000 seeds.');
    await take(packetId, '1000');
    expect(await fieldMessage(take(packetId, '1'), 'amount')).toBe('This packet holds about 0 seeds.');
    expect(held(packetId)).toBe(0);
  });

  it('does not overdraw when ten people take at once', async () => {
    const { packetId } = await makeLot();
    const outcomes = await Promise.allSettled(Array.from({ length: 10 }, () => take(packetId, '300')));
    expect(outcomes.filter((outcome) => outcome.status === 'fulfilled')).toHaveLength(3);
    expect(held(packetId)).toBe(100);
  });

  it('refuses what is no amount, no reason, or before the packet was filled', async () => {
    const { packetId } = await makeLot();
    expect(await fieldMessage(take(packetId, ''), 'amount')).toBe('Fill this in.');
    expect(await fieldMessage(take(packetId, '0'), 'amount')).toContain('between 1 and');
    expect(await fieldMessage(take(packetId, '1.5'), 'amount')).toContain('whole number');
    expect(await fieldMessage(take(packetId, 'a few'), 'amount')).toContain('Write a number');
    expect(await fieldMessage(take(packetId, '10', { reason: 'count' }), 'reason')).toBe('Choose the reason.');
    expect(await fieldMessage(take(packetId, '10', { on: '2026-10-04' }), 'on')).toContain('2026-10-05');
    expect(await fieldMessage(take(packetId, '10', { on: '2026-11-26' }), 'on')).toContain('after today');
    expect((await refusal(take('no-such-packet', '10'))).code).toBe('not-found');
    expect(countRows('Movement')).toBe(1);
  });

  it('is for volunteers and stewards', async () => {
    const { packetId } = await makeLot();
    const input = { packetId, amount: '1', unit: 'seeds', reason: 'sowing' };
    expect((await refusal(takeSeedOut(VISITOR, input))).code).toBe('not-allowed');
  });
});

describe('undoMovement', () => {
  const undo = (movementId: string) => undoMovement(VOLUNTEER, { movementId });

  it('adds a counter-entry that names what it takes back, and changes nothing', async () => {
    const { packetId } = await makeLot({ cleanWeightG: '2.5' });
    await take(packetId, '0.5', { unit: 'grams' });
    const before = ledger(packetId);
    const taken = before.at(-1) as MovementRow;
    await undo(taken.id);
    expect(ledger(packetId).slice(0, -1)).toEqual(before);
    expect(ledger(packetId).at(-1)).toMatchObject({
      reason: 'correction',
      seeds: 200,
      grams: 0.5,
      correctsId: taken.id,
    });
    expect(held(packetId)).toBe(1000);
    expect(lastAuditLine()).toMatchObject({
      command: 'undo-movement',
      entityId: packetId,
      summary: 'Took back the sowing of 200 seeds on 2026-11-25, packet P-00001 of lot L-2026-001',
    });
  });

  it('takes an entry back once, also when two people press at once', async () => {
    const { packetId } = await makeLot();
    await take(packetId, '100');
    const [, taken] = ledger(packetId) as [MovementRow, MovementRow];
    const outcomes = await Promise.allSettled([undo(taken.id), undo(taken.id)]);
    expect(outcomes.map((outcome) => outcome.status).sort()).toEqual(['fulfilled', 'rejected']);
    expect((await refusal(undo(taken.id))).code).toBe('conflict');
    expect(held(packetId)).toBe(1000);
  });

  it('does not take back a counter-entry, nor a deposit whose seed is gone, nor what is not there', async () => {
    const { packetId } = await makeLot();
    await take(packetId, '100');
    const [deposit, taken] = ledger(packetId) as [MovementRow, MovementRow];
    const gone = await refusal(undo(deposit.id));
    expect(gone.userMessage).toContain('Only 900 of these 1000 seeds');
    await undo(taken.id);
    const counter = ledger(packetId).at(-1) as MovementRow;
    expect((await refusal(undo(counter.id))).code).toBe('refused');
    expect((await refusal(undo('no-such-entry'))).code).toBe('not-found');
    await undo(deposit.id);
    expect(held(packetId)).toBe(0);
  });
});

describe('movePacket', () => {
  const move = (packetId: string, overrides: Record<string, unknown> = {}) =>
    movePacket(VOLUNTEER, {
      packetId,
      container: 'foil-pouch',
      moisturePercent: '6',
      from: '2026-11-01',
      ...overrides,
    });
  const placements = (packetId: string) =>
    connections()
      .bulk.prepare(`SELECT * FROM "Placement" WHERE "packetId" = ? ORDER BY "from", "id"`)
      .all(packetId) as Record<string, unknown>[];

  it('adds a placement and keeps where the packet was', async () => {
    const { packetId } = await makeLot();
    const freezer = await makeStore({ name: 'Freezer', kind: 'freezer', targetTemperatureC: '-18' });
    const [first] = placements(packetId);
    await move(packetId, { storeId: freezer.id });
    expect(placements(packetId)).toEqual([
      first,
      expect.objectContaining({
        storeId: freezer.id,
        from: '2026-11-01',
        container: 'foil-pouch',
        moisturePercent: 6,
      }),
    ]);
    expect(lastAuditLine()?.summary).toMatch(
      /^Moved packet P-00001 of lot L-2026-001 from Fridge \d+ to Freezer on 2026-11-01$/,
    );
  });

  it('refuses a day before the packet came where it is, and a move that changes nothing', async () => {
    const { id: storeId } = await makeStore();
    const { packetId } = await makeLot({ storeId });
    const other = await makeStore();
    expect(await fieldMessage(move(packetId, { storeId: other.id, from: '2026-10-04' }), 'from')).toContain(
      '2026-10-05',
    );
    const same = { storeId, container: 'glass-jar', moisturePercent: '7.5' };
    expect(await fieldMessage(move(packetId, same), 'storeId')).toContain('lies there already');
    expect((await refusal(move('no-such-packet', { storeId }))).code).toBe('not-found');
  });

  it('refuses to freeze moist seed until somebody says that it is meant', async () => {
    const { packetId } = await makeLot();
    const freezer = await makeStore({ name: 'Freezer', kind: 'freezer', targetTemperatureC: '-18' });
    const moist = { storeId: freezer.id, moisturePercent: '18' };
    expect(await fieldMessage(move(packetId, moist), 'moisturePercent')).toContain('Freezing can kill seed');
    await move(packetId, { ...moist, storeAnyway: 'on' });
    expect(placements(packetId)).toHaveLength(2);
  });
});
