import { insertAccount } from '@/lib/server/auth/account-rows';
import { hashPassword } from '@/lib/server/auth/password';
import type { Person, Role } from '@/lib/server/auth/roles';
import { signInLibrary } from '@/lib/server/auth/sign-in-library';
import { connections } from '@/lib/server/database/connections';
import { enqueueWrite } from '@/lib/server/database/write-queue';
import { newId } from '@/lib/server/new-id';

export const PASSWORD = 'three dry bean pods';

/** A person with an account, who may sign in with PASSWORD. */
export async function createAccount({
  role = 'visitor',
  signInName = `person-${newId()}`.slice(0, 30),
  name = `The ${role}`,
}: {
  role?: Role;
  signInName?: string;
  name?: string;
} = {}): Promise<Person & { signInName: string }> {
  const id = newId();
  const passwordHash = await hashPassword(PASSWORD);
  await enqueueWrite(() =>
    connections().writer.$transaction((tx) => insertAccount(tx, { id, name, signInName, role, passwordHash })),
  );
  return { id, name, role, signInName };
}

/** Headers as the person's browser sends them after signing in. */
export async function headersOf(signInName: string, password = PASSWORD): Promise<Headers> {
  const asking = new Headers({ 'user-agent': 'a browser', 'x-forwarded-for': '192.0.2.7' });
  const { headers } = await signInLibrary(asking).api.signInUsername({
    body: { username: signInName, password },
    headers: asking,
    returnHeaders: true,
  });
  const cookie = headers
    .getSetCookie()
    .map((line) => line.split(';')[0])
    .join('; ');
  return new Headers({ cookie, host: '192.0.2.1:4310' });
}
