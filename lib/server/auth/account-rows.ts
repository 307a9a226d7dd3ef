import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { Role } from '../../domain/people/roles';
import { AppError } from '../app-error';
import { hashOneTimeCode, newOneTimeCode, oneTimeCodeExpiry, passwordCodeKey } from './one-time-code';

/** What commands about people have in common: the sign-in library's rows, written inside a command's transaction. */
type Transaction = Prisma.TransactionClient;

const CREDENTIAL = 'credential';

interface NewAccount {
  id: string;
  name: string;
  signInName: string;
  role: Role;
  passwordHash: string;
}

/**
 * Adds a person with an account.
 *
 * @throws AppError 'conflict' beside the field when the sign-in name is taken
 */
export async function insertAccount(tx: Transaction, account: NewAccount): Promise<void> {
  if (await tx.user.findUnique({ where: { username: account.signInName }, select: { id: true } })) {
    throw new AppError('conflict', 'That sign-in name is taken. Choose another.', {
      fieldErrors: { signInName: 'Taken already. Choose another.' },
    });
  }
  await tx.user.create({
    data: {
      id: account.id,
      name: account.name,
      // The library wants an address; this one can never receive anything.
      email: `${account.id}@users.invalid`,
      username: account.signInName,
      displayUsername: account.signInName,
      role: account.role,
      accounts: {
        create: { id: account.id, accountId: account.id, providerId: CREDENTIAL, password: account.passwordHash },
      },
    },
  });
}

/** @throws AppError 'not-found' for an id that no account has */
export async function getAccount(tx: Transaction, personId: string) {
  const account = await tx.user.findUnique({
    where: { id: personId },
    select: { id: true, name: true, username: true, role: true, banned: true },
  });
  if (!account) throw new AppError('not-found', 'That person has no account here.');
  return { ...account, signInName: account.username ?? '', blocked: account.banned === true };
}

/**
 * A bank without a steward could never be opened again.
 *
 * @throws AppError 'refused' when nobody but this person is a steward who may sign in
 */
export async function requireAnotherSteward(tx: Transaction, personId: string): Promise<void> {
  const others = await tx.user.count({
    where: { id: { not: personId }, role: 'steward', OR: [{ banned: false }, { banned: null }] },
  });
  if (others === 0) {
    throw new AppError('refused', 'This is the only steward. Make somebody else a steward first.');
  }
}

export async function storePassword(tx: Transaction, personId: string, passwordHash: string): Promise<void> {
  await tx.account.updateMany({
    where: { userId: personId, providerId: CREDENTIAL },
    data: { password: passwordHash },
  });
}

/** The stored hash, or null when the person has no account here (the single steward of a loopback bank). */
export async function storedPassword(tx: Transaction, personId: string): Promise<string | null> {
  const account = await tx.account.findFirst({
    where: { userId: personId, providerId: CREDENTIAL },
    select: { password: true },
  });
  return account?.password ?? null;
}

/**
 * A code with which this person may set a password, in place of any earlier one.
 *
 * @returns the code itself: it is kept nowhere, so this is the only time that it can be shown
 */
export async function storeNewCode(tx: Transaction, personId: string, now: Date): Promise<string> {
  const code = newOneTimeCode();
  const identifier = passwordCodeKey(personId);
  await tx.verification.deleteMany({ where: { identifier } });
  await tx.verification.create({
    data: { id: identifier, identifier, value: hashOneTimeCode(code), expiresAt: oneTimeCodeExpiry(now) },
  });
  return code;
}

/** Ends sessions of a person. @returns how many */
export async function endSessions(
  tx: Transaction,
  personId: string,
  which: { only?: string; except?: string } = {},
): Promise<number> {
  const { count } = await tx.session.deleteMany({
    where: {
      userId: personId,
      ...(which.only !== undefined && { id: which.only }),
      ...(which.except !== undefined && { NOT: { id: which.except } }),
    },
  });
  return count;
}
