import { createAccession } from '@/lib/server/commands/create-accession';
import { connections } from '@/lib/server/database/connections';
import { STEWARD } from './people';

/** The id of a crop of the reference, by its name. */
export function cropIdOf(name: string): string {
  const row = connections()
    .bulk.prepare<[string], { id: string }>(`SELECT "id" FROM "Crop" WHERE "name" = ?`)
    .get(name);
  if (!row) throw new Error(`no crop ${name}`);
  return row.id;
}

/** An accession of leek through its command; override what the test is about. */
export async function makeAccession(overrides: Record<string, unknown> = {}): Promise<{ id: string; number: string }> {
  return createAccession(STEWARD, { name: 'Skerry Winter', cropId: cropIdOf('Leek'), ...overrides });
}
