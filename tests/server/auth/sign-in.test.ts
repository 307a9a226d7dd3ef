import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { z } from 'zod';
import { personOf } from '@/lib/server/auth/current-person';
import { hashPassword } from '@/lib/server/auth/password';
import { readSession } from '@/lib/server/auth/sessions';
import { signIn, signOut } from '@/lib/server/auth/sign-in';
import { blockPerson } from '@/lib/server/commands/block-person';
import { changePersonRole } from '@/lib/server/commands/change-person-role';
import { defineCommand } from '@/lib/server/commands/command';
import { endOwnSession } from '@/lib/server/commands/end-own-session';
import { endPersonSessions } from '@/lib/server/commands/end-person-sessions';
import { reader } from '@/lib/server/database/connections';
import { findSessions } from '@/lib/server/queries/people';
import { createAccount, headersOf, PASSWORD } from '@/tests/support/accounts';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });
beforeEach(() => {
  process.env.HOST = '0.0.0.0';
});
afterEach(() => {
  process.env.HOST = '';
});

const steward = { id: 'somebody', name: 'Somebody', role: 'steward' } as const;
const words = (promise: Promise<unknown>) =>
  promise.then(
    () => 'let in',
    (error) => error.userMessage,
  );

describe('signing in', () => {
  it('knows the person by name and password, and leaves word of it', async () => {
    const ada = await createAccount({ role: 'volunteer', signInName: 'ada' });
    const person = await signIn(' ADA ', PASSWORD, new Headers());
    expect(person).toEqual({ id: ada.id, name: ada.name, role: 'volunteer' });
    expect(await reader().auditEntry.findMany({ select: { byId: true, command: true } })).toEqual([
      { byId: ada.id, command: 'record-sign-in' },
    ]);
  });

  it('answers an unknown name, a wrong password and an impossible name in the same words', async () => {
    await createAccount({ signInName: 'ada' });
    const wrong = await words(signIn('ada', 'not the password', new Headers()));
    expect(wrong).toMatch(/do not go together/);
    expect(await words(signIn('nobody', PASSWORD, new Headers()))).toBe(wrong);
    expect(await words(signIn('x', PASSWORD, new Headers()))).toBe(wrong);
    expect(await words(signIn("ada' OR 1=1 --", PASSWORD, new Headers()))).toBe(wrong);
    expect(await words(signIn('ada', 'x'.repeat(1000), new Headers()))).toBe(wrong);
    expect(await reader().session.count()).toBe(0);
  });

  it('after five wrong passwords refuses the right one too, and says how long', async () => {
    await createAccount({ signInName: 'ada' });
    for (let i = 0; i < 5; i += 1) await words(signIn('ada', 'not the password', new Headers()));
    expect(await words(signIn('ada', PASSWORD, new Headers()))).toMatch(/Wait \d+ seconds/);
    expect(await reader().session.count()).toBe(0);
  });

  it('forgets wrong tries after the right password', async () => {
    await createAccount({ signInName: 'ada' });
    for (let i = 0; i < 4; i += 1) await words(signIn('ada', 'not the password', new Headers()));
    expect(await words(signIn('ada', PASSWORD, new Headers()))).toBe('let in');
    for (let i = 0; i < 4; i += 1) await words(signIn('ada', 'not the password', new Headers()));
    expect(await words(signIn('ada', PASSWORD, new Headers()))).toBe('let in');
  });

  it('tells a blocked person so, but only with the right password', async () => {
    const ada = await createAccount({ signInName: 'ada' });
    await blockPerson(steward, { personId: ada.id });
    expect(await words(signIn('ada', PASSWORD, new Headers()))).toMatch(/blocked/);
    expect(await words(signIn('ada', 'not the password', new Headers()))).toMatch(/do not go together/);
    expect(await reader().session.count()).toBe(0);
  });

  it('waits its turn while a command writes', async () => {
    await createAccount({ signInName: 'ada' });
    const slow = defineCommand({
      name: 'slow',
      role: 'visitor',
      schema: z.object({}),
      async run({ audit }) {
        await audit({ entity: 'Test', entityId: '1', summary: 'began' });
        // Six times as long as the sign-in beside it needs to check its password and come to its own write.
        for (let i = 0; i < 6; i += 1) await hashPassword(PASSWORD);
        expect(await reader().session.count()).toBe(0);
      },
    });
    const started = performance.now();
    await Promise.all([slow(steward, {}), headersOf('ada')]);
    expect(performance.now() - started).toBeLessThan(8_000);
    expect(await reader().session.count()).toBe(1);
  });
});

describe('a session', () => {
  it('is nobody without a cookie, and with one that was made up or changed', async () => {
    const ada = await createAccount({ signInName: 'ada' });
    const headers = await headersOf('ada');
    expect(await personOf(headers)).toEqual({ id: ada.id, name: ada.name, role: 'visitor' });
    expect(await personOf(new Headers({ host: '192.0.2.1' }))).toBeNull();
    const cookie = headers.get('cookie') as string;
    const changed = cookie.replace(/=(.)/, (_, first) => `=${first === 'a' ? 'b' : 'a'}`);
    expect(await personOf(new Headers({ cookie: changed, host: '192.0.2.1' }))).toBeNull();
    const token = (await reader().session.findFirstOrThrow()).token;
    const unsigned = `${cookie.split('=')[0]}=${token}`;
    expect(await personOf(new Headers({ cookie: unsigned, host: '192.0.2.1' }))).toBeNull();
  });

  it('ends at sign-out, when the person ends it, and when a steward does', async () => {
    const ada = await createAccount({ signInName: 'ada' });
    const [one, two, three, four] = await Promise.all([1, 2, 3, 4].map(() => headersOf('ada')));
    await signOut(one as Headers);
    expect(await personOf(one as Headers)).toBeNull();
    expect((await personOf(two as Headers))?.id).toBe(ada.id);
    const session = await readSession(two as Headers);
    await endOwnSession(ada, { sessionId: session?.id });
    expect(await personOf(two as Headers)).toBeNull();
    expect(await findSessions(ada.id)).toHaveLength(2);
    await endPersonSessions(steward, { personId: ada.id });
    expect(await personOf(three as Headers)).toBeNull();
    expect(await personOf(four as Headers)).toBeNull();
  });

  it('of somebody else cannot be ended', async () => {
    const ada = await createAccount({ signInName: 'ada' });
    const ben = await createAccount({ signInName: 'ben' });
    const session = await readSession(await headersOf('ada'));
    expect(await words(endOwnSession(ben, { sessionId: session?.id }))).toMatch(/ended already/);
    expect(await findSessions(ada.id)).toHaveLength(1);
  });

  it('takes a new role from the next request on, and stops at once when the person is blocked', async () => {
    const ada = await createAccount({ signInName: 'ada' });
    const headers = await headersOf('ada');
    await changePersonRole(steward, { personId: ada.id, role: 'volunteer' });
    expect((await personOf(headers))?.role).toBe('volunteer');
    await blockPerson(steward, { personId: ada.id });
    expect(await personOf(headers)).toBeNull();
  });

  it('is refused to a person marked blocked even if its row were left', async () => {
    const ada = await createAccount({ signInName: 'ada' });
    const headers = await headersOf('ada');
    await reader().user.update({ where: { id: ada.id }, data: { banned: true } });
    expect(await personOf(headers)).toBeNull();
  });

  it('runs out after thirty days, and reading it does not make it longer', async () => {
    await createAccount({ signInName: 'ada' });
    const headers = await headersOf('ada');
    const { id, expiresAt } = await reader().session.findFirstOrThrow();
    expect((expiresAt.getTime() - Date.now()) / 86_400_000).toBeCloseTo(30, 2);
    await reader().session.update({ where: { id }, data: { expiresAt: new Date(Date.now() + 60_000) } });
    const before = await reader().session.findFirstOrThrow();
    expect(await personOf(headers)).not.toBeNull();
    expect(await reader().session.findFirstOrThrow()).toEqual(before);
    await reader().session.update({ where: { id }, data: { expiresAt: new Date(Date.now() - 1) } });
    expect(await personOf(headers)).toBeNull();
  });

  it('is kept with its address and device, and never with anything that opens it', async () => {
    const ada = await createAccount({ signInName: 'ada' });
    await headersOf('ada');
    const [session] = await findSessions(ada.id);
    expect(session).toMatchObject({ address: '192.0.2.7', userAgent: 'a browser' });
    expect(Object.keys(session ?? {})).not.toContain('token');
  });

  const cookieFor = async (proto: 'http' | 'https'): Promise<string> => {
    const { signInLibrary } = await import('@/lib/server/auth/sign-in-library');
    const asking = new Headers({ 'x-forwarded-proto': proto });
    const { headers } = await signInLibrary(asking).api.signInUsername({
      body: { username: 'ada', password: PASSWORD },
      headers: asking,
      returnHeaders: true,
    });
    return headers.getSetCookie()[0] ?? '';
  };

  it('sets a cookie that scripts and other sites cannot use', async () => {
    await createAccount({ signInName: 'ada' });
    // Without a TLS door of ours nobody is believed about https.
    const line = await cookieFor('https');
    expect(line).toMatch(/^hilum\.session_token=/);
    expect(line).toMatch(/HttpOnly/i);
    expect(line).toMatch(/SameSite=Lax/i);
    expect(line).not.toMatch(/Secure/i);
  });

  it('behind the TLS door is marked Secure for whoever came by https, and opens nothing over plain http', async () => {
    await createAccount({ signInName: 'ada' });
    vi.stubEnv('HILUM_TLS_PORT', '4310');
    try {
      const secure = await cookieFor('https');
      expect(secure).toMatch(/^__Secure-hilum\.session_token=/);
      expect(secure).toMatch(/; Secure/i);
      // This computer itself comes by plain http, where such a cookie might never come back.
      expect(await cookieFor('http')).toMatch(/^hilum\.session_token=(?!.*Secure)/i);
      const cookie = secure.split(';')[0] as string;
      const asking = (proto: string) => new Headers({ cookie, host: '192.0.2.1:4310', 'x-forwarded-proto': proto });
      expect((await personOf(asking('https')))?.name).toBe('The visitor');
      expect(await personOf(asking('http'))).toBeNull();
    } finally {
      vi.unstubAllEnvs();
    }
  });
});
