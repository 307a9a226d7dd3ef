import { z } from 'zod';
import { newPasswordSchema, personNameSchema, signInNameSchema } from '../../schemas/person';
import { AppError } from '../app-error';
import { insertAccount } from '../auth/account-rows';
import { hashPassword } from '../auth/password';
import { defineCommand } from './command';

export const firstStewardSchema = z.object({
  name: personNameSchema,
  signInName: signInNameSchema,
  password: newPasswordSchema,
});

/**
 * The account that opens a bank to other computers. The acting person is the steward-to-be, whom founder.ts vouches
 * for after it has seen the setup code; it is refused once anybody has an account.
 */
export const createFirstSteward = defineCommand({
  name: 'create-first-steward',
  role: 'steward',
  schema: firstStewardSchema,
  async run({ tx, person, audit }, { name, signInName, password }) {
    if ((await tx.user.count()) > 0) {
      throw new AppError('refused', 'This bank has its steward already. Sign in, or ask a steward for an account.');
    }
    await insertAccount(tx, {
      id: person.id,
      name,
      signInName,
      role: 'steward',
      passwordHash: await hashPassword(password),
    });
    await audit({
      entity: 'Person',
      entityId: person.id,
      summary: `Opened the bank to other computers as its first steward, ${name}`,
      after: { name, signInName, role: 'steward' },
    });
    return { signInName };
  },
});
