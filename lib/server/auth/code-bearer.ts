import 'server-only';
import { reader } from '../database/connections';
import { claimedAddress, countTry, forgiveTries } from './count-tries';
import { hashOneTimeCode, passwordCodeKey, sameText } from './one-time-code';
import { isRole, type Person } from './roles';
import { WRONG_CODE, wrongCode } from './wrong-code';

/**
 * Who a steward's code was made for: they have no session yet, the code is what they come with.
 *
 * @throws AppError the same for an unknown name, a wrong, used or old code, and a blocked person; 'refused' after too
 *   many tries
 * Checked in tests/server/commands/people.test.ts
 */
export async function codeBearer(signInName: string, code: string, requestHeaders: Headers): Promise<Person> {
  const username = signInName.trim().toLowerCase();
  const tries = { purpose: 'password-code', name: username, address: claimedAddress(requestHeaders) } as const;
  await countTry(tries);
  const user = await reader().user.findUnique({ where: { username } });
  const stored = await reader().verification.findFirst({
    where: { identifier: passwordCodeKey(user?.id ?? ''), expiresAt: { gt: new Date() } },
  });
  const isRight = sameText(stored?.value ?? '', hashOneTimeCode(code));
  if (!user || user.banned || !isRole(user.role) || !isRight) throw wrongCode(WRONG_CODE);
  await forgiveTries(tries);
  return { id: user.id, name: user.name, role: user.role };
}
