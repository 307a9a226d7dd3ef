import { z } from 'zod';
import { defineCommand } from './command';

/** Leaves word in the log of changes: the session itself is the sign-in library's to write. */
export const recordSignOut = defineCommand({
  name: 'record-sign-out',
  role: 'visitor',
  schema: z.object({}),
  async run({ person, audit }) {
    await audit({ entity: 'Person', entityId: person.id, summary: 'Signed out' });
  },
});
