import { z } from 'zod';
import { AppError } from '../app-error';
import { endSessions } from '../auth/account-rows';
import { defineCommand } from './command';

/** Signs one of one's own devices out. */
export const endOwnSession = defineCommand({
  name: 'end-own-session',
  role: 'visitor',
  schema: z.object({ sessionId: z.string({ error: 'Choose a session.' }).min(1).max(100) }),
  async run({ tx, person, audit }, { sessionId }) {
    if ((await endSessions(tx, person.id, { only: sessionId })) === 0) {
      throw new AppError('not-found', 'That session had ended already.');
    }
    await audit({ entity: 'Person', entityId: person.id, summary: 'Signed one of their devices out' });
    return { sessionId };
  },
});
