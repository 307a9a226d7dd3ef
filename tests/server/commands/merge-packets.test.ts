import { describe, expect, it } from 'vitest';
import { changePacketRole } from '@/lib/server/commands/change-packet-role';
import { mergePackets } from '@/lib/server/commands/merge-packets';
import { movePacket } from '@/lib/server/commands/move-packet';
import { splitPacket } from '@/lib/server/commands/split-packet';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { lastAuditLine } from '@/tests/support/audit';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { seedsIn, storedPacket } from '@/tests/support/packets';
import { VISITOR, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const merge = (packetId: string, otherPacketId: string, overrides: Record<string, unknown> = {}) =>
  mergePackets(VOLUNTEER, { packetId, otherPacketId, ...overrides });

/** A lot of 1000 seeds of which 300 went into a packet of their own on 20 October. */
async function splitLot(overrides: Record<string, unknown> = {}) {
  const lot = await makeLot({ seedCount: '1000' });
  const { id: storeId } = overrides.storeId ? { id: overrides.storeId } : await makeStore();
  const { packetId: otherId } = await splitPacket(VOLUNTEER, {
    packetId: lot.packetId,
    amount: '300',
    unit: 'seeds',
    role: 'active',
    container: 'foil-pouch',
    sealed: 'on',
    from: '2026-10-20',
    ...overrides,
    storeId,
  });
  return { ...lot, otherId };
}

describe('merging two packets', () => {
  it('pours all of one into the other by two lines that belong together', async () => {
    const { packetId, otherId } = await splitLot();
    await merge(packetId, otherId);
    expect([await seedsIn(packetId), await seedsIn(otherId)]).toEqual([1000, 0]);
    const into = (await storedPacket(packetId)).movements.at(-1);
    expect(into).toMatchObject({ reason: 'merge', seeds: 300, note: 'out of P-00002' });
    expect((await storedPacket(otherId)).movements.at(-1)).toMatchObject({
      reason: 'merge',
      seeds: -300,
      pairId: into?.pairId,
      note: 'into P-00001',
    });
    expect(lastAuditLine()?.summary).toContain('Poured packet P-00002 (300 seeds) into packet P-00001');
  });

  it('takes along what is unsure of the seed that was poured', async () => {
    const lot = await makeLot({ seedCount: '', cleanWeightG: '10', thousandSeedWeightG: '2.5' });
    const { id: storeId } = await makeStore();
    const part = { packetId: lot.packetId, role: 'active', storeId, container: 'foil-pouch', sealed: 'on' };
    const { packetId: otherId } = await splitPacket(VOLUNTEER, { ...part, amount: '2.5', unit: 'grams' });
    const spread = (await storedPacket(otherId)).movements[0]?.seedsSd as number;
    expect(spread).toBeGreaterThan(0);
    await merge(lot.packetId, otherId);
    expect((await storedPacket(lot.packetId)).movements.at(-1)?.seedsSd).toBeCloseTo(spread, 9);
  });

  it('keeps the packet whose seed aged more, unless somebody ticks that it is meant', async () => {
    const warm = await makeStore({ name: 'Warm shelf', kind: 'room', targetTemperatureC: '25' });
    const { packetId, otherId } = await splitLot({ storeId: warm.id, storeAnyway: 'on' });
    const refused = await refusal(merge(packetId, otherId));
    expect(refused.fieldErrors.packetId).toBe(
      'The seed of P-00002 has aged more in store than that of P-00001, and the packet that is kept tells the forecast what all the seed has been through. Keep P-00002 instead.',
    );
    expect(refused.fieldErrors.keepAnyway).toContain('Tick this to keep P-00001');
    expect(await seedsIn(otherId)).toBe(300);
    await merge(packetId, otherId, { keepAnyway: 'on' });
    expect(await seedsIn(otherId)).toBe(0);
  });

  it('the other way round needs no tick', async () => {
    const warm = await makeStore({ name: 'Warm shelf', kind: 'room', targetTemperatureC: '25' });
    const { packetId, otherId } = await splitLot({ storeId: warm.id, storeAnyway: 'on' });
    await merge(otherId, packetId);
    expect([await seedsIn(packetId), await seedsIn(otherId)]).toEqual([0, 1000]);
  });

  it('keeps the packet whose ageing cannot be reckoned, lest that be forgotten', async () => {
    const moist = { moisturePercent: '16', storeAnyway: 'on' };
    const { packetId, otherId } = await splitLot(moist);
    expect(await fieldMessage(merge(packetId, otherId), 'packetId')).toContain('cannot be reckoned');
    await merge(otherId, packetId);
    expect(await seedsIn(otherId)).toBe(1000);
  });

  it('never mixes seed of two lots, nor a packet with itself, nor pours an empty one', async () => {
    const { packetId, otherId } = await splitLot();
    const stranger = await makeLot();
    expect(await fieldMessage(merge(packetId, stranger.packetId), 'otherPacketId')).toContain('never mixed');
    expect(await fieldMessage(merge(packetId, packetId), 'otherPacketId')).toContain('into itself');
    const all = { packetId: otherId, amount: '300', unit: 'seeds', reason: 'sowing' };
    await takeSeedOut(VOLUNTEER, all);
    expect(await fieldMessage(merge(packetId, otherId), 'otherPacketId')).toContain('P-00002 is empty');
    expect((await refusal(merge(packetId, 'no-such-packet'))).code).toBe('not-found');
    expect((await refusal(mergePackets(VISITOR, {}))).code).toBe('not-allowed');
  });

  it('does not pour away the only safety duplicate without a tick', async () => {
    const { packetId, otherId, number } = await splitLot({ role: 'safety-duplicate' });
    const refused = await refusal(merge(packetId, otherId));
    expect(refused.fieldErrors.otherPacketId).toBe(`P-00002 is the only safety duplicate of lot ${number}.`);
    expect(refused.fieldErrors.loseDuplicate).toContain('Tick this');
    await merge(packetId, otherId, { loseDuplicate: 'on' });
    expect(await seedsIn(packetId)).toBe(1000);
    const second = await splitLot({ role: 'safety-duplicate' });
    await changePacketRole(VOLUNTEER, { packetId: second.packetId, role: 'safety-duplicate' });
    await merge(second.packetId, second.otherId);
    expect(await seedsIn(second.packetId)).toBe(1000);
  });

  it('is refused on a day before either packet was last moved', async () => {
    const { packetId, otherId } = await splitLot();
    expect(await fieldMessage(merge(packetId, otherId, { on: '2026-10-19' }), 'on')).toContain('P-00002');
    await movePacket(VOLUNTEER, { packetId, storeId: (await makeStore()).id, from: '2026-11-01' });
    expect(await fieldMessage(merge(packetId, otherId, { on: '2026-10-31' }), 'on')).toContain('P-00001');
  });

  it('by two people at once pours only once', async () => {
    const { packetId, otherId } = await splitLot();
    const outcomes = await Promise.allSettled([merge(packetId, otherId), merge(packetId, otherId)]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(await seedsIn(packetId)).toBe(1000);
  });
});

describe('changing what a packet is for', () => {
  const change = (packetId: string, role: string, overrides: Record<string, unknown> = {}) =>
    changePacketRole(VOLUNTEER, { packetId, role, ...overrides });

  it('is written down', async () => {
    const { packetId, number } = await makeLot();
    await change(packetId, 'safety-duplicate');
    expect((await storedPacket(packetId)).role).toBe('safety-duplicate');
    expect(lastAuditLine()?.summary).toBe(
      `Packet P-00001 of lot ${number} is safety duplicate now, no longer active stock`,
    );
    expect(await fieldMessage(change(packetId, 'safety-duplicate'), 'role')).toContain('already');
  });

  it('does not give up the only safety duplicate without a tick; one of two needs none', async () => {
    const { packetId, otherId } = await splitLot({ role: 'safety-duplicate' });
    expect((await refusal(change(otherId, 'active'))).fieldErrors.loseDuplicate).toContain('Tick this');
    await change(packetId, 'safety-duplicate');
    await change(packetId, 'active');
    await change(otherId, 'base', { loseDuplicate: 'on' });
    expect((await storedPacket(otherId)).role).toBe('base');
  });

  it('is refused while it lies at a partner bank', async () => {
    const partner = await makeStore({ name: 'Across the sound', kind: 'partner-bank' });
    const { otherId } = await splitLot({ storeId: partner.id });
    expect(await fieldMessage(change(otherId, 'base', { loseDuplicate: 'on' }), 'role')).toContain(
      'Move it back first',
    );
  });
});
