import { z } from 'zod';
import { defineCommand } from './command';

/** Leaves word in the log of changes: the session itself is the sign-in library's to write. */
export const recordSignIn = defineCommand({
  name: 'record-sign-in',
  role: 'visitor',
  schema: z.object({}),
  async run({ person, audit }) {
    await audit({ entity: 'Person', entityId: person.id, summary: 'Signed in' });
  },
});
