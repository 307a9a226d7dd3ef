import { describe, expect, it } from 'vitest';
import { recordPacketCare } from '@/lib/server/commands/record-packet-care';
import { repackPacket } from '@/lib/server/commands/repack-packet';
import { lastAuditLine } from '@/tests/support/audit';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { storedPacket } from '@/tests/support/packets';
import { VISITOR, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const repack = (packetId: string, overrides: Record<string, unknown> = {}) =>
  repackPacket(VOLUNTEER, {
    packetId,
    container: 'foil-pouch',
    moisturePercent: '5,5',
    sealed: 'on',
    from: '2026-11-10',
    ...overrides,
  });
const care = (packetId: string, what: string, overrides: Record<string, unknown> = {}) =>
  recordPacketCare(VOLUNTEER, { packetId, what, on: '2026-11-10', ...overrides });

describe('repacking', () => {
  it('begins a new stay in the same place, in the new container and at the new moisture', async () => {
    const { packetId } = await makeLot();
    const [before] = (await storedPacket(packetId)).placements;
    await repack(packetId);
    const { placements, care: lines } = await storedPacket(packetId);
    expect(placements).toEqual([
      before,
      expect.objectContaining({
        storeId: before?.storeId,
        from: '2026-11-10',
        container: 'foil-pouch',
        moisturePercent: 5.5,
      }),
    ]);
    expect(lines).toMatchObject([{ what: 'sealed', on: '2026-11-10' }]);
    expect(lastAuditLine()?.summary).toBe(
      'Repacked packet P-00001 of lot L-2026-001 on 2026-11-10: foil-pouch, 5.5 % moist, sealed',
    );
  });

  it('knows no moisture where none is written: what the old container kept says nothing of the new one', async () => {
    const { packetId } = await makeLot();
    await repack(packetId, { moisturePercent: '' });
    expect((await storedPacket(packetId)).placements.at(-1)?.moisturePercent).toBeNull();
  });

  it('leaves no desiccant of the old container standing', async () => {
    const { packetId } = await makeLot();
    await care(packetId, 'desiccant', { desiccant: 'silica-gel' });
    await repack(packetId);
    const { care: lines } = await storedPacket(packetId);
    expect(lines.map(({ what, desiccant }) => [what, desiccant])).toEqual([
      ['desiccant', 'silica-gel'],
      ['desiccant', null],
      ['sealed', null],
    ]);
  });

  it('warns before seed is sealed too moist, and lets somebody who knows better', async () => {
    const { packetId } = await makeLot();
    const refused = await refusal(repack(packetId, { moisturePercent: '11' }));
    expect(refused.fieldErrors.moisturePercent).toContain('too moist to seal');
    await repack(packetId, { moisturePercent: '11', storeAnyway: 'on' });
    expect((await storedPacket(packetId)).placements).toHaveLength(2);
  });

  it('refuses a day before the packet came where it is, and is for volunteers', async () => {
    const { packetId } = await makeLot();
    expect(await fieldMessage(repack(packetId, { from: '2026-10-04' }), 'from')).toContain('2026-10-05');
    expect((await refusal(repackPacket(VISITOR, { packetId }))).code).toBe('not-allowed');
  });
});

describe('caring for a container', () => {
  it('writes down each thing done, in order', async () => {
    const { packetId } = await makeLot();
    await care(packetId, 'sealed');
    await care(packetId, 'opened', { on: '2026-11-12', note: 'for a test' });
    await care(packetId, 'desiccant', { on: '2026-11-12', desiccant: 'dried-rice', changeDueOn: '2026-12-24' });
    expect((await storedPacket(packetId)).care).toMatchObject([
      { what: 'sealed', on: '2026-11-10' },
      { what: 'opened', on: '2026-11-12', note: 'for a test' },
      { what: 'desiccant', on: '2026-11-12', desiccant: 'dried-rice', changeDueOn: '2026-12-24' },
    ]);
    expect(lastAuditLine()?.summary).toBe('Put oven-dried rice into packet P-00001 of lot L-2026-001 on 2026-11-12');
  });

  it('gives a desiccant its usual day of change where nobody chose one', async () => {
    const { packetId } = await makeLot();
    await care(packetId, 'desiccant', { desiccant: 'silica-gel-blue' });
    expect((await storedPacket(packetId)).care[0]?.changeDueOn).toBe('2027-11-10');
  });

  it('refuses what cannot have happened: opened twice, none taken out, a seal on paper, days out of order', async () => {
    const { packetId } = await makeLot();
    await care(packetId, 'opened');
    expect(await fieldMessage(care(packetId, 'opened'), 'what')).toContain('open since 2026-11-10');
    expect(await fieldMessage(care(packetId, 'desiccant'), 'desiccant')).toContain('none in it');
    expect(await fieldMessage(care(packetId, 'sealed', { on: '2026-11-09' }), 'on')).toContain('2026-11-10');
    expect(await fieldMessage(care(packetId, 'sealed', { on: '2026-11-26' }), 'on')).toContain('after today');
    const paper = await makeLot({ container: 'paper-envelope', storeId: (await makeStore()).id });
    expect(await fieldMessage(care(paper.packetId, 'sealed'), 'what')).toContain('lets air in');
    expect(await fieldMessage(care(paper.packetId, 'opened', { on: '2026-10-01' }), 'on')).toContain('2026-10-05');
  });
});
