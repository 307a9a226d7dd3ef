import { z } from 'zod';
import { personIdSchema } from '../../schemas/person';
import { getAccount } from '../auth/account-rows';
import { defineCommand } from './command';

/** Lets a blocked person sign in again, with the password they had. */
export const unblockPerson = defineCommand({
  name: 'unblock-person',
  role: 'steward',
  schema: z.object({ personId: personIdSchema }),
  async run({ tx, audit }, { personId }) {
    const account = await getAccount(tx, personId);
    await tx.user.update({ where: { id: personId }, data: { banned: false, banReason: null, banExpires: null } });
    await audit({
      entity: 'Person',
      entityId: personId,
      summary: `Opened the account of ${account.name} again`,
      before: { blocked: account.blocked },
      after: { blocked: false },
    });
    return { personId };
  },
});
