import type { Person } from '@/lib/server/auth/roles';
import { recordGerminationTest } from '@/lib/server/commands/record-germination-test';
import { connections } from '@/lib/server/database/connections';
import { newId } from '@/lib/server/new-id';

export const VOLUNTEER: Person = { id: 'volunteer', name: 'Vera Volunteer', role: 'volunteer' };

/** A lot with one packet, straight into the database: what a germination test needs, without the collection's forms. */
export async function createLotWithPacket({
  number = 'L-2020-001',
  crop = 'Leek',
  accessionName = 'Skerry Winter',
  harvestedOn = '2020-09-15',
  seeds = 1000,
  filledOn = '2020-11-01',
}: {
  number?: string;
  crop?: string;
  accessionName?: string;
  harvestedOn?: string;
  seeds?: number;
  filledOn?: string;
} = {}) {
  const { writer } = connections();
  const { id: cropId } = await writer.crop.findUniqueOrThrow({ where: { name: crop } });
  const ids = { accessionId: newId(), lotId: newId(), packetId: newId() };
  await writer.accession.create({
    data: { id: ids.accessionId, number: `A-${number}`, name: accessionName, cropId },
  });
  await writer.lot.create({
    data: { id: ids.lotId, number, accessionId: ids.accessionId, harvestedOn, isolation: 'open' },
  });
  await writer.packet.create({ data: { id: ids.packetId, number: `P-${number}`, lotId: ids.lotId } });
  await writer.movement.create({
    data: { id: newId(), packetId: ids.packetId, on: filledOn, reason: 'deposit', seeds, byId: 'steward' },
  });
  return { ...ids, number, cropId };
}

/** Input of a test that is accepted: two replicates of 50 on L-2020-001. Override what the test is about. */
export function germinationTestOf(overrides: Record<string, unknown> = {}) {
  return {
    lot: 'L-2020-001',
    setOn: '2026-03-02',
    finishedOn: '2026-03-16',
    replicates: [
      { seeds: '50', normal: '41', abnormal: '3', hard: '', fresh: '', dead: '' },
      { seeds: '50', normal: '40', abnormal: '2', hard: '', fresh: '', dead: '' },
    ],
    ...overrides,
  };
}

export const recordTest = (overrides: Record<string, unknown> = {}, person: Person = VOLUNTEER) =>
  recordGerminationTest(person, germinationTestOf(overrides));
