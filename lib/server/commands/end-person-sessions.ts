import { z } from 'zod';
import { personIdSchema } from '../../schemas/person';
import { endSessions, getAccount } from '../auth/account-rows';
import { defineCommand } from './command';

/** Signs a person out everywhere; they may sign in again. For a lost phone. */
export const endPersonSessions = defineCommand({
  name: 'end-person-sessions',
  role: 'steward',
  schema: z.object({ personId: personIdSchema }),
  async run({ tx, audit }, { personId }) {
    const account = await getAccount(tx, personId);
    const ended = await endSessions(tx, personId);
    await audit({
      entity: 'Person',
      entityId: personId,
      summary: `Signed ${account.name} out everywhere`,
      after: { sessionsEnded: ended },
    });
    return { personId };
  },
});
