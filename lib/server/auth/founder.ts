import 'server-only';
import { AppError } from '../app-error';
import { environment, isLoopbackOnly } from '../env';
import { newId } from '../new-id';
import { claimedAddress, countTry } from './count-tries';
import { sameText } from './one-time-code';
import type { Person } from './roles';

/**
 * The steward-to-be of a bank without accounts: whoever types the code that the terminal printed, because only they
 * can see that terminal.
 *
 * @throws AppError when the code is wrong, when too many were tried, when none was printed, or on loopback
 * Checked in tests/server/commands/people.test.ts
 */
export async function founder(setupCode: string, requestHeaders: Headers): Promise<Person> {
  if (isLoopbackOnly()) throw new AppError('refused', 'On this computer nobody signs in: Hilum opens without.');
  const printed = environment().HILUM_SETUP_CODE;
  if (!printed) {
    throw new AppError('refused', "Stop Hilum and start it with 'npm run up': it prints the code to use here.");
  }
  await countTry({ purpose: 'setup-code', name: '', address: claimedAddress(requestHeaders) });
  if (!sameText(setupCode.trim(), printed)) {
    throw new AppError('invalid-input', 'That is not the code in the terminal. Nothing was made.', {
      fieldErrors: { setupCode: 'Check the code.' },
    });
  }
  return { id: newId(), name: 'First steward', role: 'steward' };
}
