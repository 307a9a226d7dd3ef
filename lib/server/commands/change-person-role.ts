import { z } from 'zod';
import { personIdSchema, roleSchema } from '../../schemas/person';
import { getAccount, requireAnotherSteward } from '../auth/account-rows';
import { defineCommand } from './command';

/** Changes what a person may do, from their next click on. The last steward stays one. */
export const changePersonRole = defineCommand({
  name: 'change-person-role',
  role: 'steward',
  schema: z.object({ personId: personIdSchema, role: roleSchema }),
  async run({ tx, audit }, { personId, role }) {
    const account = await getAccount(tx, personId);
    if (role !== 'steward' && account.role === 'steward') await requireAnotherSteward(tx, personId);
    await tx.user.update({ where: { id: personId }, data: { role } });
    await audit({
      entity: 'Person',
      entityId: personId,
      summary: `Made ${account.name} a ${role}`,
      before: { role: account.role },
      after: { role },
    });
    return { personId };
  },
});
