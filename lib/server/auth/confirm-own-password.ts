import 'server-only';
import { AppError } from '../app-error';
import { reader } from '../database/connections';
import { storedPassword } from './account-rows';
import { claimedAddress, countTry, forgiveTries } from './count-tries';
import { verifyPassword } from './password';

/** Words for a wrong current password, here and in the command that changes it. */
export const wrongOwnPassword = (): AppError =>
  new AppError('invalid-input', 'The password you have now is another one. Nothing was changed.', {
    fieldErrors: { currentPassword: 'Check this password.' },
  });

/**
 * Whoever finds a device signed in must not be able to try passwords on it without end.
 *
 * @throws AppError 'invalid-input' for a wrong password, 'refused' after too many
 * Checked in tests/server/commands/people.test.ts
 */
export async function confirmOwnPassword(personId: string, password: string, requestHeaders: Headers): Promise<void> {
  const tries = { purpose: 'own-password', name: personId, address: claimedAddress(requestHeaders) } as const;
  await countTry(tries);
  const stored = await storedPassword(reader(), personId);
  if (stored === null || !(await verifyPassword(stored, password))) throw wrongOwnPassword();
  await forgiveTries(tries);
}
