import { z } from 'zod';
import { newPasswordSchema, typedCodeSchema } from '../../schemas/person';
import { endSessions, storePassword } from '../auth/account-rows';
import { hashOneTimeCode, passwordCodeKey, sameText } from '../auth/one-time-code';
import { hashPassword } from '../auth/password';
import { WRONG_CODE, wrongCode } from '../auth/wrong-code';
import { defineCommand } from './command';

/**
 * Sets one's own password with a steward's code and signs out everywhere. The acting person is whoever the code was
 * made for (code-bearer.ts); the code is checked again here, where it is used up.
 */
export const setPasswordWithCode = defineCommand({
  name: 'set-password-with-code',
  role: 'visitor',
  schema: z.object({ code: typedCodeSchema, password: newPasswordSchema }),
  async run({ tx, person, audit }, { code, password }) {
    const identifier = passwordCodeKey(person.id);
    const stored = await tx.verification.findFirst({ where: { identifier, expiresAt: { gt: new Date() } } });
    if (!stored || !sameText(stored.value, hashOneTimeCode(code))) throw wrongCode(WRONG_CODE);
    await tx.verification.deleteMany({ where: { identifier } });
    await storePassword(tx, person.id, await hashPassword(password));
    const ended = await endSessions(tx, person.id);
    await audit({
      entity: 'Person',
      entityId: person.id,
      summary: 'Set a password with a code',
      after: { sessionsEnded: ended },
    });
    return { personId: person.id };
  },
});
