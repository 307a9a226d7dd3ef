import { describe, expect, it } from 'vitest';
import { GET } from '@/app/api/calendar/[secret]/route';
import type { Person } from '@/lib/server/auth/roles';
import { createCalendarFeed } from '@/lib/server/commands/create-calendar-feed';
import { revokeCalendarFeed } from '@/lib/server/commands/revoke-calendar-feed';
import { reader } from '@/lib/server/database/connections';
import { createTray } from '@/tests/support/create-tray';
import { STEWARD, VOLUNTEER } from '@/tests/support/people';
import { only, readCalendar } from '@/tests/support/read-calendar';
import { refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const ask = (secret: string) =>
  GET(new Request(`http://127.0.0.1/api/calendar/${secret}`), { params: Promise.resolve({ secret }) });
const ANOTHER: Person = { id: 'another', name: 'Another volunteer', role: 'volunteer' };
const audits = () => reader().auditEntry.findMany({ where: { entity: 'calendar' }, orderBy: { id: 'asc' } });

describe('a calendar of counts that a program reads', () => {
  it('is read with its secret alone, with and without the ending that programs want', async () => {
    await createTray({ number: 'T-0301' });
    const { secret } = await createCalendarFeed(VOLUNTEER, { name: 'my phone' });
    expect(secret.length).toBeGreaterThanOrEqual(43);
    for (const address of [secret, `${secret}.ics`]) {
      const answer = await ask(address);
      expect(answer.status).toBe(200);
      expect(answer.headers.get('content-type')).toContain('text/calendar');
      const events = readCalendar(await answer.text()).components;
      expect(events.map((event) => only(event, 'SUMMARY').text)).toEqual([
        'Late: Count T-0301 Skerry Winter',
        'Last count of T-0301 Skerry Winter',
      ]);
    }
  });

  it('answers nothing to another secret, to its hash, or to nonsense', async () => {
    const { secret } = await createCalendarFeed(VOLUNTEER, { name: 'my phone' });
    const { hash } = await reader().calendarFeed.findFirstOrThrow();
    for (const wrong of [`${secret.slice(0, -1)}`, hash, 'nothing', '..', 'x'.repeat(1000)]) {
      const answer = await ask(wrong);
      expect(answer.status, wrong).toBe(404);
      expect(await answer.text()).toContain('no calendar at this address');
    }
  });

  it('is kept as a hash only, and its secret is in no log of changes', async () => {
    const { id, secret } = await createCalendarFeed(VOLUNTEER, { name: 'my phone' });
    const kept = await reader().calendarFeed.findUniqueOrThrow({ where: { id } });
    const [entry] = await audits();
    expect(JSON.stringify([kept, entry])).not.toContain(secret);
    expect(entry).toMatchObject({ command: 'create-calendar-feed', byId: VOLUNTEER.id });
  });

  it('is noted as read at most once a day', async () => {
    const { id, secret } = await createCalendarFeed(VOLUNTEER, { name: 'my phone' });
    const lastUsed = async () => (await reader().calendarFeed.findUniqueOrThrow({ where: { id } })).lastUsedAt;
    await ask(secret);
    const first = await lastUsed();
    expect(first).not.toBeNull();
    await ask(secret);
    expect(await lastUsed()).toEqual(first);
  });
});

describe('revoked', () => {
  it('it answers no more, and says so once', async () => {
    const { id, secret } = await createCalendarFeed(VOLUNTEER, { name: 'my phone' });
    await revokeCalendarFeed(VOLUNTEER, { id });
    expect((await ask(secret)).status).toBe(404);
    expect((await audits()).map(({ command }) => command)).toEqual(['create-calendar-feed', 'revoke-calendar-feed']);
    expect((await refusal(revokeCalendarFeed(VOLUNTEER, { id }))).code).toBe('refused');
  });

  it('is for whoever made it, and for a steward', async () => {
    const { id } = await createCalendarFeed(VOLUNTEER, { name: 'my phone' });
    expect((await refusal(revokeCalendarFeed(ANOTHER, { id }))).code).toBe('not-allowed');
    await revokeCalendarFeed(STEWARD, { id });
  });

  it('what is not there is said', async () => {
    expect((await refusal(revokeCalendarFeed(STEWARD, { id: 'nothing' }))).code).toBe('not-found');
  });
});

it('wants a name', async () => {
  expect((await refusal(createCalendarFeed(VOLUNTEER, { name: ' ' }))).fieldErrors).toHaveProperty('name');
});
