import { z } from 'zod';
import { personIdSchema } from '../../schemas/person';
import { AppError } from '../app-error';
import { getAccount, storeNewCode } from '../auth/account-rows';
import { defineCommand } from './command';

/**
 * A code for somebody who lost their password: shown this once, good for 24 hours. The old password works until the
 * new one is set, so that a code made by mistake locks nobody out.
 */
export const createPasswordCode = defineCommand({
  name: 'create-password-code',
  role: 'steward',
  schema: z.object({ personId: personIdSchema }),
  async run({ tx, audit }, { personId }) {
    const account = await getAccount(tx, personId);
    if (account.blocked) {
      throw new AppError('refused', `${account.name} is blocked. Open the account again first.`);
    }
    const code = await storeNewCode(tx, personId, new Date());
    await audit({ entity: 'Person', entityId: personId, summary: `Made a password code for ${account.name}` });
    return { personId, name: account.name, signInName: account.signInName, code };
  },
});
