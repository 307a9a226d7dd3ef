import { z } from 'zod';
import { newPasswordSchema, typedPasswordSchema } from '../../schemas/person';
import { AppError } from '../app-error';
import { endSessions, storedPassword, storePassword } from '../auth/account-rows';
import { wrongOwnPassword } from '../auth/confirm-own-password';
import { hashPassword, verifyPassword } from '../auth/password';
import { defineCommand } from './command';

/** Changes one's own password and signs out every other device. */
export const changeOwnPassword = defineCommand({
  name: 'change-own-password',
  role: 'visitor',
  schema: z.object({
    currentPassword: typedPasswordSchema,
    newPassword: newPasswordSchema,
    /** The session to keep: the one this is done from. */
    keepSessionId: z.string().max(100).optional(),
  }),
  async run({ tx, person, audit }, { currentPassword, newPassword, keepSessionId }) {
    const stored = await storedPassword(tx, person.id);
    if (stored === null) throw new AppError('refused', 'On this computer nobody signs in, so there is no password.');
    if (!(await verifyPassword(stored, currentPassword))) throw wrongOwnPassword();
    await storePassword(tx, person.id, await hashPassword(newPassword));
    const ended = await endSessions(tx, person.id, { except: keepSessionId });
    await audit({
      entity: 'Person',
      entityId: person.id,
      summary: 'Changed their own password',
      after: { sessionsEnded: ended },
    });
    return { personId: person.id };
  },
});
