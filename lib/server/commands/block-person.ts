import { z } from 'zod';
import { personIdSchema } from '../../schemas/person';
import { endSessions, getAccount, requireAnotherSteward } from '../auth/account-rows';
import { passwordCodeKey } from '../auth/one-time-code';
import { defineCommand } from './command';

/** Shuts a person out at once, on every device. What they recorded stays, under their name. */
export const blockPerson = defineCommand({
  name: 'block-person',
  role: 'steward',
  schema: z.object({ personId: personIdSchema }),
  async run({ tx, audit }, { personId }) {
    const account = await getAccount(tx, personId);
    if (account.role === 'steward') await requireAnotherSteward(tx, personId);
    await tx.user.update({ where: { id: personId }, data: { banned: true } });
    await tx.verification.deleteMany({ where: { identifier: passwordCodeKey(personId) } });
    const ended = await endSessions(tx, personId);
    await audit({
      entity: 'Person',
      entityId: personId,
      summary: `Blocked ${account.name}`,
      before: { blocked: account.blocked },
      after: { blocked: true, sessionsEnded: ended },
    });
    return { personId };
  },
});
