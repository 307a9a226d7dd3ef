import { z } from 'zod';
import { personNameSchema, roleSchema, signInNameSchema } from '../../schemas/person';
import { AppError } from '../app-error';
import { insertAccount, storeNewCode } from '../auth/account-rows';
import { hashOfNoPassword } from '../auth/password';
import { newId } from '../new-id';
import { defineCommand } from './command';

/** Gives somebody an account. They choose their own password with the code, which is shown this once. */
export const createPerson = defineCommand({
  name: 'create-person',
  role: 'steward',
  schema: z.object({ name: personNameSchema, signInName: signInNameSchema, role: roleSchema }),
  async run({ tx, audit }, { name, signInName, role }) {
    // Without this a bank used on one computer could get accounts but no steward who can sign in.
    if ((await tx.user.count({ where: { role: 'steward' } })) === 0) {
      throw new AppError(
        'refused',
        "The first account is a steward's. Start Hilum with HOST set, and make it at the address shown.",
      );
    }
    const id = newId();
    await insertAccount(tx, { id, name, signInName, role, passwordHash: await hashOfNoPassword() });
    const code = await storeNewCode(tx, id, new Date());
    await audit({
      entity: 'Person',
      entityId: id,
      summary: `Gave ${name} an account as ${role}`,
      after: { name, signInName, role },
    });
    return { personId: id, name, signInName, code };
  },
});
