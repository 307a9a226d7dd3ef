import type { Person } from '@/lib/server/auth/roles';
import { recordGerminationTest } from '@/lib/server/commands/record-germination-test';
import { cropIdOf, makeAccession } from './create-accession';
import { makeLot } from './create-lot';
import { VOLUNTEER } from './people';

/** A lot in store with one packet, of an accession of its own: 1000 seeds of leek unless told otherwise. */
export async function createLotWithPacket({
  number = 'L-2020-001',
  crop = 'Leek',
  accessionName = 'Skerry Winter',
  harvestedOn = '2020-09-15',
  seeds = 1000,
  filledOn = harvestedOn,
  treatment = '',
}: {
  number?: string;
  crop?: string;
  accessionName?: string;
  harvestedOn?: string;
  seeds?: number;
  filledOn?: string;
  treatment?: string;
} = {}) {
  const cropId = cropIdOf(crop);
  const accession = await makeAccession({ name: accessionName, cropId });
  const dates = { harvestedOn, storedOn: filledOn };
  const lot = await makeLot({ accession: accession.number, lotNumber: number, seedCount: seeds, treatment, ...dates });
  return { ...lot, accessionId: accession.id, cropId };
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
