import { logCleanedLot } from '@/lib/server/commands/log-cleaned-lot';
import { makeAccession } from './create-accession';
import { makeStore } from './create-store';
import { VOLUNTEER } from './people';

/** What the form sends for a lot of 1000 counted seeds. */
export function cleanedLot(overrides: Record<string, unknown> = {}) {
  return {
    harvestedOn: '2026-09-20',
    isolation: 'bagged flowers',
    seedCount: '1000',
    container: 'glass-jar',
    moisturePercent: '7,5',
    storedOn: '2026-10-05',
    ...overrides,
  };
}

/** A lot in store through its command, with an accession and a store of its own unless they are given. */
export async function makeLot(overrides: Record<string, unknown> = {}) {
  const accession = overrides.accession ?? (await makeAccession()).number;
  const storeId = overrides.storeId ?? (await makeStore()).id;
  return logCleanedLot(VOLUNTEER, cleanedLot({ ...overrides, accession, storeId }));
}
