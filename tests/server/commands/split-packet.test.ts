import { describe, expect, it } from 'vitest';
import { movePacket } from '@/lib/server/commands/move-packet';
import { splitPacket } from '@/lib/server/commands/split-packet';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { reader } from '@/lib/server/database/connections';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { storedPacket } from '@/tests/support/packets';
import { VOLUNTEER } from '@/tests/support/people';
import { fieldMessage } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

const split = (packetId: string, storeId: string, overrides: Record<string, unknown> = {}) =>
  splitPacket(VOLUNTEER, {
    packetId,
    amount: '300',
    unit: 'seeds',
    role: 'safety-duplicate',
    storeId,
    container: 'foil-pouch',
    sealed: 'on',
    ...overrides,
  });

describe('splitting a packet', () => {
  useTestBank({ fresh: 'each' });

  it('moves seed from one packet to the other, none lost and none made', async () => {
    const lot = await makeLot({ seedCount: '1000' });
    const away = await makeStore({ name: 'Partner freezer', targetTemperatureC: '-18' });
    const made = await split(lot.packetId, away.id);
    const [old, fresh] = [await storedPacket(lot.packetId), await storedPacket(made.packetId)];
    expect(old.movements.map(({ seeds }) => seeds)).toEqual([1000, -300]);
    expect(fresh).toMatchObject({ role: 'safety-duplicate', movements: [{ seeds: 300, reason: 'split' }] });
    const judgement = await reader().lotJudgement.findFirstOrThrow({ where: { lotNumber: lot.number } });
    expect(judgement.seedsLeft).toBe(1000);
    expect(judgement.sentence).not.toMatch(/no safety duplicate/);
  });

  it('gives the new packet nothing to take out from before it was filled', async () => {
    const lot = await makeLot();
    const made = await split(lot.packetId, (await makeStore()).id, { from: '2026-11-10' });
    const take = (on: string) =>
      takeSeedOut(VOLUNTEER, { packetId: made.packetId, amount: '10', unit: 'seeds', reason: 'sowing', on });
    expect(await fieldMessage(take('2026-11-09'), 'on')).toContain('filled on 2026-11-10');
    expect((await take('2026-11-10')).seedsLeft).toBe(290);
  });

  it('ties its two lines together, with what a count or a weight leaves unsure', async () => {
    const lot = await makeLot({ seedCount: '', cleanWeightG: '10', thousandSeedWeightG: '2.5' });
    const { id: storeId } = await makeStore();
    const weighed = await split(lot.packetId, storeId, { amount: '2,5', unit: 'grams' });
    const [into] = (await storedPacket(weighed.packetId)).movements;
    const outOf = (await storedPacket(lot.packetId)).movements.at(-1);
    expect(into).toMatchObject({ seeds: 1000, grams: 2.5 });
    expect(outOf).toMatchObject({ seeds: -1000, grams: -2.5, pairId: into?.pairId, seedsSd: into?.seedsSd });
    expect(into?.pairId).toEqual(expect.any(String));
    expect(into?.seedsSd).toBeGreaterThan(10);
    const counted = await split(lot.packetId, storeId, { amount: '50' });
    expect((await storedPacket(counted.packetId)).movements[0]?.seedsSd).toBe(0);
  });

  it('gives the new packet the storage history of its seed, and its moisture where none was measured anew', async () => {
    const lot = await makeLot({ seedCount: '1000', storedOn: '2026-10-01' });
    const [warm, cold] = [
      await makeStore({ name: 'Warm' }),
      await makeStore({ name: 'Cold', targetTemperatureC: '-18' }),
    ];
    await movePacket(VOLUNTEER, { packetId: lot.packetId, storeId: warm.id, from: '2026-10-20' });
    const made = await split(lot.packetId, cold.id, { role: 'base', from: '2026-11-01' });
    const { placements } = await storedPacket(made.packetId);
    expect(placements.map(({ from }) => from)).toEqual(['2026-10-01', '2026-10-20', '2026-11-01']);
    expect(placements.at(-1)).toMatchObject({ storeId: cold.id, moisturePercent: 7.5 });
  });

  it('writes down how the new packet was sealed, and with what to keep it dry', async () => {
    const lot = await makeLot();
    const { id: storeId } = await makeStore();
    const made = await split(lot.packetId, storeId, {
      desiccant: 'silica-gel',
      desiccantGrams: '5',
      from: '2026-11-01',
    });
    expect((await storedPacket(made.packetId)).care).toMatchObject([
      { what: 'desiccant', desiccant: 'silica-gel', desiccantGrams: 5, changeDueOn: '2027-04-30' },
      { what: 'sealed', on: '2026-11-01' },
    ]);
    const open = await split(lot.packetId, storeId, { sealed: undefined });
    expect((await storedPacket(open.packetId)).care).toMatchObject([{ what: 'opened' }]);
  });

  it('makes a safety duplicate of whatever goes to a partner bank, also into a freezer of it', async () => {
    const lot = await makeLot();
    const partner = await makeStore({ name: 'Across the sound', kind: 'partner-bank' });
    const freezer = await makeStore({ name: 'Their freezer', kind: 'freezer', parentId: partner.id });
    const made = await split(lot.packetId, freezer.id, { role: 'active' });
    expect((await storedPacket(made.packetId)).role).toBe('safety-duplicate');
  });

  it('never takes more than there is', async () => {
    const lot = await makeLot({ seedCount: '100' });
    const { id: storeId } = await makeStore();
    expect(await fieldMessage(split(lot.packetId, storeId, { amount: '101' }), 'amount')).toMatch(
      /holds about 100 seeds/,
    );
  });

  it('refuses what does not go together, each beside its field', async () => {
    const lot = await makeLot();
    const { id: storeId } = await makeStore();
    const refused = (overrides: Record<string, unknown>, field: string) =>
      fieldMessage(split(lot.packetId, storeId, overrides), field);
    expect(await refused({ container: 'paper-envelope' }, 'sealed')).toContain('lets air in');
    expect(await refused({ desiccantGrams: '5' }, 'desiccant')).toBe('Choose the desiccant.');
    const early = { desiccant: 'silica-gel', changeDueOn: '2026-11-25' };
    expect(await refused(early, 'changeDueOn')).toContain('after 2026-11-25');
    expect(await refused({ amount: '' }, 'amount')).toBe('Fill this in.');
    expect(await refused({ from: '2026-10-04' }, 'from')).toContain('2026-10-05');
  });
});
