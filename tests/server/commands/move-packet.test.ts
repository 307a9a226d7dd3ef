import { describe, expect, it } from 'vitest';
import { movePacket } from '@/lib/server/commands/move-packet';
import { repackPacket } from '@/lib/server/commands/repack-packet';
import { StaleVersion } from '@/lib/server/commands/stale-version';
import { connections } from '@/lib/server/database/connections';
import { lastAuditLine } from '@/tests/support/audit';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { storedPacket } from '@/tests/support/packets';
import { STEWARD, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const move = (packetId: string, storeId: string, overrides: Record<string, unknown> = {}) =>
  movePacket(VOLUNTEER, { packetId, storeId, ...overrides });

/** As a steward would set it, by whatever form does that. */
const setStore = (id: string, column: 'capacityPackets' | 'closedOn', value: number | string) =>
  connections().bulk.prepare(`UPDATE "Store" SET "${column}" = ? WHERE "id" = ?`).run(value, id);

describe('moving a packet', () => {
  it('takes its container and moisture along where nothing else is said', async () => {
    const { packetId } = await makeLot();
    const { id } = await makeStore();
    await move(packetId, id);
    expect((await storedPacket(packetId)).placements.at(-1)).toMatchObject({
      storeId: id,
      container: 'glass-jar',
      moisturePercent: 7.5,
      from: '2026-11-25',
    });
    expect(await fieldMessage(move(packetId, id), 'storeId')).toContain('lies there already');
  });

  it('into a partner bank makes it a safety duplicate, and says so', async () => {
    const { packetId } = await makeLot();
    const { id } = await makeStore({ name: 'Across the sound', kind: 'partner-bank' });
    await move(packetId, id);
    expect((await storedPacket(packetId)).role).toBe('safety-duplicate');
    expect(lastAuditLine()?.summary).toContain('to Across the sound on 2026-11-25, there a safety duplicate');
  });

  it('is refused into a closed store from the day on which it was closed, also into a box that stands in it', async () => {
    const { packetId } = await makeLot();
    const freezer = await makeStore({ name: 'Old freezer' });
    const box = await makeStore({ name: 'Box in the old freezer', kind: 'box', parentId: freezer.id });
    setStore(freezer.id, 'closedOn', '2026-11-20');
    expect(await fieldMessage(move(packetId, box.id, { from: '2026-11-20' }), 'storeId')).toBe(
      'Old freezer has been closed since 2026-11-20: choose another store.',
    );
    await move(packetId, box.id, { from: '2026-11-19' });
    expect((await storedPacket(packetId)).placements.at(-1)?.storeId).toBe(box.id);
  });

  it('into a full store wants a tick; what lies in its boxes counts, what left it does not', async () => {
    const freezer = await makeStore({ name: 'Small freezer' });
    const box = await makeStore({ name: 'Box', kind: 'box', parentId: freezer.id });
    setStore(freezer.id, 'capacityPackets', 2);
    const [first, second, third] = [await makeLot(), await makeLot(), await makeLot()];
    await move(first.packetId, box.id);
    await move(second.packetId, freezer.id);
    const refused = await refusal(move(third.packetId, box.id));
    expect(refused.fieldErrors.storeId).toBe('Small freezer is full: 2 packets lie in it, and 2 fit.');
    expect(refused.fieldErrors.overfill).toContain('Tick this');
    // From one place to another inside it is nothing more.
    await move(first.packetId, freezer.id);
    await move(second.packetId, (await makeStore()).id);
    await move(third.packetId, box.id);
    await move(second.packetId, box.id, { overfill: 'on' });
    expect((await storedPacket(second.packetId)).placements.at(-1)?.storeId).toBe(box.id);
  });
});

describe('two volunteers at once', () => {
  it('the second is told where the packet is now, and may then send it again', async () => {
    const { packetId } = await makeLot();
    const seen = (await storedPacket(packetId)).placements.at(-1)?.id;
    const [mine, theirs] = [await makeStore({ name: 'Mine' }), await makeStore({ name: 'Theirs' })];
    await movePacket(STEWARD, { packetId, storeId: theirs.id, version: seen });
    const refused = await refusal(move(packetId, mine.id, { version: seen }));
    expect(refused).toBeInstanceOf(StaleVersion);
    expect(refused.userMessage).toContain('by Test steward');
    expect(refused.userMessage).toContain('It lies in Theirs, glass jar, rubber seal, since 2026-11-25.');
    const { currentVersion } = refused as StaleVersion<string>;
    await move(packetId, mine.id, { version: currentVersion });
    expect((await storedPacket(packetId)).placements.map(({ storeId }) => storeId).slice(1)).toEqual([
      theirs.id,
      mine.id,
    ]);
  });

  it('one moves and one repacks: neither overwrites what the other did unseen', async () => {
    const { packetId } = await makeLot();
    const version = (await storedPacket(packetId)).placements.at(-1)?.id;
    const { id } = await makeStore();
    const outcomes = await Promise.allSettled([
      move(packetId, id, { version }),
      repackPacket(VOLUNTEER, { packetId, container: 'foil-pouch', moisturePercent: '6', sealed: 'on', version }),
    ]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect((await storedPacket(packetId)).placements).toHaveLength(2);
  });
});
