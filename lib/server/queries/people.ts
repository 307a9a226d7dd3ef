import 'server-only';
import { reader } from '../database/connections';

export interface PersonRow {
  id: string;
  name: string;
  signInName: string;
  role: string;
  blocked: boolean;
  /** Devices signed in now. */
  sessions: number;
  /** When a code that has not been used yet stops working. */
  codeUntil: Date | null;
}

/** True once somebody has an account: from then on the welcome page is closed. */
export const hasAccounts = async (): Promise<boolean> => (await reader().user.count()) > 0;

/** Everybody with an account: stewards first, then by name. */
export async function findPeople(): Promise<PersonRow[]> {
  const [users, codes] = await Promise.all([
    reader().user.findMany({
      orderBy: [{ name: 'asc' }],
      select: {
        id: true,
        name: true,
        username: true,
        role: true,
        banned: true,
        _count: { select: { sessions: { where: { expiresAt: { gt: new Date() } } } } },
      },
    }),
    reader().verification.findMany({
      where: { identifier: { startsWith: 'password-code:' }, expiresAt: { gt: new Date() } },
      select: { identifier: true, expiresAt: true },
    }),
  ]);
  const order = ['steward', 'volunteer', 'visitor'];
  return users
    .map((user) => ({
      id: user.id,
      name: user.name,
      signInName: user.username ?? '',
      role: user.role,
      blocked: user.banned === true,
      sessions: user._count.sessions,
      codeUntil: codes.find((code) => code.identifier === `password-code:${user.id}`)?.expiresAt ?? null,
    }))
    .sort((one, other) => order.indexOf(one.role) - order.indexOf(other.role));
}

export const getPerson = async (id: string): Promise<PersonRow | null> =>
  (await findPeople()).find((person) => person.id === id) ?? null;

export interface SessionRow {
  id: string;
  startedAt: Date;
  endsAt: Date;
  address: string;
  userAgent: string;
}

/** A person's sessions that have not run out, newest first. Their tokens never leave the database. */
export async function findSessions(personId: string): Promise<SessionRow[]> {
  const sessions = await reader().session.findMany({
    where: { userId: personId, expiresAt: { gt: new Date() } },
    orderBy: { createdAt: 'desc' },
    select: { id: true, createdAt: true, expiresAt: true, ipAddress: true, userAgent: true },
  });
  return sessions.map((session) => ({
    id: session.id,
    startedAt: session.createdAt,
    endsAt: session.expiresAt,
    address: session.ipAddress ?? '',
    userAgent: session.userAgent ?? '',
  }));
}
