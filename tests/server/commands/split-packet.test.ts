import { describe, expect, it } from 'vitest';
import { movePacket } from '@/lib/server/commands/move-packet';
import { splitPacket } from '@/lib/server/commands/split-packet';
import { reader } from '@/lib/server/database/connections';
import { makeLot } from '../../support/create-lot';
import { makeStore } from '../../support/create-store';
import { VOLUNTEER } from '../../support/people';
import { fieldMessage } from '../../support/refusal';
import { useTestBank } from '../../support/test-bank';

const packetOf = (id: string) =>
  reader().packet.findUniqueOrThrow({
    where: { id },
    include: { placements: { orderBy: [{ from: 'asc' }, { id: 'asc' }] }, movements: { orderBy: { id: 'asc' } } },
  });

describe('splitting a packet', () => {
  useTestBank({ fresh: 'each' });

  it('moves seed from one packet to the other, none lost and none made', async () => {
    const lot = await makeLot({ seedCount: '1000' });
    const away = await makeStore({ name: 'Partner freezer', targetTemperatureC: '-18' });
    const split = await splitPacket(VOLUNTEER, {
      packetId: lot.packetId,
      seeds: '300',
      role: 'safety-duplicate',
      storeId: away.id,
      container: 'foil-pouch',
    });
    const [old, fresh] = [await packetOf(lot.packetId), await packetOf(split.packetId)];
    expect(old.movements.map(({ seeds }) => seeds)).toEqual([1000, -300]);
    expect(fresh).toMatchObject({ role: 'safety-duplicate', movements: [{ seeds: 300, reason: 'split' }] });
    const judgement = await reader().lotJudgement.findFirstOrThrow({ where: { lotNumber: lot.number } });
    expect(judgement.seedsLeft).toBe(1000);
    expect(judgement.sentence).not.toMatch(/no safety duplicate/);
  });

  it('gives the new packet the storage history of its seed', async () => {
    const lot = await makeLot({ seedCount: '1000', storedOn: '2026-10-01' });
    const [warm, cold] = [
      await makeStore({ name: 'Warm' }),
      await makeStore({ name: 'Cold', targetTemperatureC: '-18' }),
    ];
    await movePacket(VOLUNTEER, {
      packetId: lot.packetId,
      storeId: warm.id,
      container: 'glass-jar',
      moisturePercent: '7,5',
      from: '2026-10-20',
    });
    const split = await splitPacket(VOLUNTEER, {
      packetId: lot.packetId,
      seeds: '10',
      role: 'base',
      storeId: cold.id,
      container: 'foil-pouch',
      from: '2026-11-01',
    });
    const { placements } = await packetOf(split.packetId);
    expect(placements.map(({ from }) => from)).toEqual(['2026-10-01', '2026-10-20', '2026-11-01']);
    expect(placements.at(-1)).toMatchObject({ storeId: cold.id, moisturePercent: 7.5 });
  });

  it('never takes more than there is', async () => {
    const lot = await makeLot({ seedCount: '100' });
    const store = await makeStore({ name: 'Elsewhere' });
    const request = {
      packetId: lot.packetId,
      seeds: '101',
      role: 'active',
      storeId: store.id,
      container: 'foil-pouch',
    };
    expect(await fieldMessage(splitPacket(VOLUNTEER, request), 'seeds')).toMatch(/holds about 100 seeds/);
  });
});
