import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { codeBearer } from '@/lib/server/auth/code-bearer';
import { confirmOwnPassword } from '@/lib/server/auth/confirm-own-password';
import { founder } from '@/lib/server/auth/founder';
import type { Person } from '@/lib/server/auth/roles';
import { signIn } from '@/lib/server/auth/sign-in';
import { blockPerson } from '@/lib/server/commands/block-person';
import { changeOwnPassword } from '@/lib/server/commands/change-own-password';
import { changePersonRole } from '@/lib/server/commands/change-person-role';
import { createFirstSteward } from '@/lib/server/commands/create-first-steward';
import { createPasswordCode } from '@/lib/server/commands/create-password-code';
import { createPerson } from '@/lib/server/commands/create-person';
import { setPasswordWithCode } from '@/lib/server/commands/set-password-with-code';
import { unblockPerson } from '@/lib/server/commands/unblock-person';
import { reader } from '@/lib/server/database/connections';
import { findPeople, findSessions, hasAccounts } from '@/lib/server/queries/people';
import { createAccount, headersOf, PASSWORD } from '@/tests/support/accounts';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });
beforeEach(() => {
  vi.stubEnv('HOST', '0.0.0.0');
  vi.stubEnv('HILUM_SETUP_CODE', 'field-gate-77');
});
afterEach(() => {
  vi.unstubAllEnvs();
  vi.useRealTimers();
});

const nowhere = new Headers();
const NEW_PASSWORD = 'a jar of black beans';
const founding = { name: 'Ada', signInName: 'ada', password: PASSWORD };
const words = (promise: Promise<unknown>) =>
  promise.then(
    () => 'done',
    (error) => error.userMessage,
  );
const auditText = async () => JSON.stringify(await reader().auditEntry.findMany());

describe('the first steward', () => {
  it('is whoever has the code from the terminal, once', async () => {
    expect(await hasAccounts()).toBe(false);
    await createFirstSteward(await founder(' field-gate-77 ', nowhere), founding);
    expect(await hasAccounts()).toBe(true);
    expect(await signIn('ada', PASSWORD, nowhere)).toMatchObject({ name: 'Ada', role: 'steward' });
    const second = createFirstSteward(await founder('field-gate-77', nowhere), { ...founding, signInName: 'ben' });
    expect(await words(second)).toMatch(/has its steward already/);
    expect(await findPeople()).toHaveLength(1);
  });

  it('is one even when two people send the form at the same time', async () => {
    const person = await founder('field-gate-77', nowhere);
    const outcomes = await Promise.all([
      words(createFirstSteward({ ...person, id: 'one' }, founding)),
      words(createFirstSteward({ ...person, id: 'two' }, { ...founding, signInName: 'ben' })),
    ]);
    expect(outcomes.filter((outcome) => outcome === 'done')).toHaveLength(1);
  });

  it('is nobody with a wrong code, and guessing is slowed down', async () => {
    for (let i = 0; i < 5; i += 1) expect(await words(founder(`guess-${i}`, nowhere))).toMatch(/not the code/);
    expect(await words(founder('field-gate-77', nowhere))).toMatch(/Wait/);
  });

  it('is nobody when no code was printed, or on loopback', async () => {
    vi.stubEnv('HILUM_SETUP_CODE', '');
    expect(await words(founder('', nowhere))).toMatch(/npm run up/);
    vi.stubEnv('HOST', '127.0.0.1');
    expect(await words(founder('field-gate-77', nowhere))).toMatch(/nobody signs in/);
  });
});

describe('people', () => {
  let steward: Person;
  beforeEach(async () => {
    steward = await createAccount({ role: 'steward', signInName: 'ada', name: 'Ada' });
  });
  const addBen = () => createPerson(steward, { name: 'Ben', signInName: 'Ben', role: 'volunteer' });

  it('choose their own password with the code that a steward hands them', async () => {
    const { code, personId } = await addBen();
    expect(await words(signIn('ben', '', nowhere))).not.toBe('done');
    const ben = await codeBearer('ben', code.toLowerCase(), nowhere);
    expect(ben).toEqual({ id: personId, name: 'Ben', role: 'volunteer' });
    await setPasswordWithCode(ben, { code, password: NEW_PASSWORD });
    expect(await signIn('ben', NEW_PASSWORD, nowhere)).toEqual(ben);
  });

  it('use a code once, within a day, and only the newest', async () => {
    const first = await addBen();
    const { code } = await createPasswordCode(steward, { personId: first.personId });
    const wrong = await words(codeBearer('ben', first.code, nowhere));
    expect(wrong).toMatch(/do not go together/);
    expect(await words(codeBearer('nobody', code, nowhere))).toBe(wrong);
    const ben = await codeBearer('ben', code, nowhere);
    expect(await words(setPasswordWithCode(ben, { code: first.code, password: NEW_PASSWORD }))).toBe(wrong);
    await setPasswordWithCode(ben, { code, password: NEW_PASSWORD });
    expect(await words(codeBearer('ben', code, nowhere))).toBe(wrong);
    expect(await words(setPasswordWithCode(ben, { code, password: PASSWORD }))).toBe(wrong);

    const late = await createPasswordCode(steward, { personId: ben.id });
    vi.useFakeTimers({ now: Date.now() + 24 * 3_600_000 + 1000, toFake: ['Date'] });
    expect(await words(codeBearer('ben', late.code, nowhere))).toBe(wrong);
    expect(await words(setPasswordWithCode(ben, { code: late.code, password: PASSWORD }))).toBe(wrong);
  });

  it('cannot use the code of somebody else', async () => {
    const ben = await addBen();
    const cy = await createPerson(steward, { name: 'Cy', signInName: 'cy.', role: 'visitor' });
    expect(await words(codeBearer('cy.', ben.code, nowhere))).toMatch(/do not go together/);
    const bearer = await codeBearer('cy.', cy.code, nowhere);
    expect(await words(setPasswordWithCode(bearer, { code: ben.code, password: NEW_PASSWORD }))).toMatch(/together/);
  });

  it('are signed out everywhere by a new password, except here when they change it themselves', async () => {
    const ben = await createAccount({ signInName: 'ben' });
    await headersOf('ben');
    await headersOf('ben');
    const [here] = await findSessions(ben.id);
    const change = { currentPassword: PASSWORD, newPassword: NEW_PASSWORD, keepSessionId: here?.id };
    expect(await words(changeOwnPassword(ben, { ...change, currentPassword: 'another one' }))).toMatch(/another one/);
    expect(await findSessions(ben.id)).toHaveLength(2);
    await changeOwnPassword(ben, change);
    expect((await findSessions(ben.id)).map((session) => session.id)).toEqual([here?.id]);
    expect(await words(signIn('ben', PASSWORD, nowhere))).toMatch(/do not go together/);
    const { code } = await createPasswordCode(steward, { personId: ben.id });
    expect(await words(signIn('ben', NEW_PASSWORD, nowhere))).toBe('done');
    await setPasswordWithCode(ben, { code, password: PASSWORD });
    expect(await findSessions(ben.id)).toHaveLength(0);
  });

  it('who try passwords on a device that was left signed in are slowed down', async () => {
    await confirmOwnPassword(steward.id, PASSWORD, nowhere);
    for (let i = 0; i < 5; i += 1) {
      expect(await words(confirmOwnPassword(steward.id, `guess ${i}`, nowhere))).toMatch(/another one/);
    }
    expect(await words(confirmOwnPassword(steward.id, PASSWORD, nowhere))).toMatch(/Wait/);
  });

  it('cannot share a sign-in name, whatever its capitals', async () => {
    const error = await createPerson(steward, { name: 'Other', signInName: 'ADA', role: 'visitor' }).catch((e) => e);
    expect(error).toMatchObject({ code: 'conflict', fieldErrors: { signInName: expect.stringMatching(/Taken/) } });
  });

  it('the last steward cannot be demoted or blocked', async () => {
    expect(await words(changePersonRole(steward, { personId: steward.id, role: 'volunteer' }))).toMatch(/only steward/);
    expect(await words(blockPerson(steward, { personId: steward.id }))).toMatch(/only steward/);
    const ben = await createAccount({ role: 'steward', signInName: 'ben' });
    await blockPerson(steward, { personId: ben.id });
    expect(await words(blockPerson(steward, { personId: steward.id }))).toMatch(/only steward/);
    await unblockPerson(steward, { personId: ben.id });
    await changePersonRole(steward, { personId: steward.id, role: 'visitor' });
    expect(await words(changePersonRole(ben, { personId: ben.id, role: 'visitor' }))).toMatch(/only steward/);
  });

  it('two stewards who demote each other at once leave one', async () => {
    const ben = await createAccount({ role: 'steward', signInName: 'ben' });
    const outcomes = await Promise.all([
      words(changePersonRole(steward, { personId: ben.id, role: 'visitor' })),
      words(changePersonRole(ben, { personId: steward.id, role: 'visitor' })),
    ]);
    expect(outcomes.filter((outcome) => outcome === 'done')).toHaveLength(1);
    expect((await findPeople()).filter((person) => person.role === 'steward')).toHaveLength(1);
  });

  it('who are blocked lose their code and get no new one', async () => {
    const { code, personId } = await addBen();
    await blockPerson(steward, { personId });
    expect(await words(codeBearer('ben', code, nowhere))).toMatch(/do not go together/);
    expect(await words(createPasswordCode(steward, { personId }))).toMatch(/blocked/);
    await unblockPerson(steward, { personId });
    expect(await words(codeBearer('ben', code, nowhere))).toMatch(/do not go together/);
  });

  it('an unknown person is said to be unknown', async () => {
    for (const command of [blockPerson, unblockPerson, createPasswordCode]) {
      expect(await words(command(steward, { personId: 'nobody' }))).toMatch(/no account/);
    }
    expect(await words(changePersonRole(steward, { personId: 'nobody', role: 'visitor' }))).toMatch(/no account/);
  });

  it('neither passwords, codes nor their hashes get into the log of changes', async () => {
    const { code } = await addBen();
    const ben = await codeBearer('ben', code, nowhere);
    await setPasswordWithCode(ben, { code, password: NEW_PASSWORD });
    await changeOwnPassword(ben, { currentPassword: NEW_PASSWORD, newPassword: PASSWORD });
    const text = await auditText();
    expect(await reader().auditEntry.count()).toBe(3);
    for (const secret of [code, NEW_PASSWORD, PASSWORD, 'argon2']) expect(text).not.toContain(secret);
    const stored = JSON.stringify(await reader().verification.findMany());
    expect(stored).not.toContain(code);
  });
});

it('a bank without accounts gets no other account before its steward’s', async () => {
  const single = { id: 'single-steward', name: 'Steward', role: 'steward' } as const;
  const refused = words(createPerson(single, { name: 'Ben', signInName: 'ben', role: 'visitor' }));
  expect(await refused).toMatch(/first account is a steward/);
  expect(await hasAccounts()).toBe(false);
});
