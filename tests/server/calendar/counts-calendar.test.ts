import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import { countDays } from '@/lib/domain/germination/bench/count-days';
import { countsAhead } from '@/lib/domain/germination/bench/counts-ahead';
import { countsCalendar } from '@/lib/server/calendar/counts-calendar';
import type { TrayUnderWay } from '@/lib/server/queries/trays-under-way';
import { type Component, dateOf, only, readCalendar } from '@/tests/support/read-calendar';

const TODAY = '2026-11-25';
const NOW = new Date('2026-11-25T14:05:06Z');
const PLAN = { firstCountOn: '2026-11-26', finalCountOn: '2026-12-05', countEveryDays: 3 };

function tray(changes: Partial<TrayUnderWay> = {}): TrayUnderWay {
  const whole = {
    ...PLAN,
    id: '019a0000-0000-7000-8000-000000000001',
    number: 'T-0204',
    lotId: 'lot',
    lotNumber: 'L-2019-031',
    accessionId: 'accession',
    accessionName: 'Skerry Winter',
    cropName: 'Leek',
    place: 'incubator 1, shelf 2',
    temperatures: '20-30',
    setOn: '2026-11-20',
    version: 1,
    changedAt: '2026-11-20T08:00:00.000+00:00',
    dishes: 4,
    seeds: 200,
    remaining: 200,
    lastCountedOn: null,
    toClose: false,
    disagreements: 0,
    ...changes,
  };
  const ahead = countsAhead(whole, whole.lastCountedOn, TODAY);
  return { ...whole, ahead, next: ahead[0] as TrayUnderWay['next'] };
}

const written = (trays: TrayUnderWay[], bankAddress: string | null = null, today = TODAY) =>
  countsCalendar({ trays, bankName: 'Brannasay Community Seed Bank', bankAddress, today, now: NOW });
const eventsOf = (trays: TrayUnderWay[]) => readCalendar(written(trays)).components;
const summary = (event: Component) => only(event, 'SUMMARY').text;

describe('a calendar of counts', () => {
  it('is one VCALENDAR with what RFC 5545 demands, published, named, and read again every hour', () => {
    const calendar = readCalendar(written([tray()]));
    expect(calendar.name).toBe('VCALENDAR');
    expect(only(calendar, 'VERSION').raw).toBe('2.0');
    expect(only(calendar, 'PRODID').raw).toMatch(/^-\/\/Hilum\/\//);
    expect(only(calendar, 'METHOD').raw).toBe('PUBLISH');
    expect(only(calendar, 'X-WR-CALNAME').text).toBe('Counts, Brannasay Community Seed Bank');
    expect(only(calendar, 'REFRESH-INTERVAL')).toMatchObject({ raw: 'PT1H', parameters: { VALUE: 'DURATION' } });
    for (const event of calendar.components) {
      expect(event.name).toBe('VEVENT');
      expect(only(event, 'DTSTAMP').raw).toBe('20261125T140506Z');
      expect(only(event, 'LAST-MODIFIED').raw).toBe('20261120T080000Z');
      expect(only(event, 'UID').raw).not.toBe('');
    }
  });

  it('has an all-day event on each of the planned days, the last one marked', () => {
    const events = eventsOf([tray()]);
    expect(events.map((event) => dateOf(event, 'DTSTART'))).toEqual(countDays(PLAN));
    for (const event of events) expect(dateOf(event, 'DTEND')).toBe(addDays(dateOf(event, 'DTSTART'), 1));
    expect(events.map(summary)).toEqual([
      'Count T-0204 Skerry Winter',
      'Count T-0204 Skerry Winter',
      'Count T-0204 Skerry Winter',
      'Last count of T-0204 Skerry Winter',
    ]);
  });

  it('says what lies where, and leads to the tray where phones reach the bank', () => {
    const [event] = readCalendar(written([tray()], 'https://seedroom.example')).components as [Component];
    expect(only(event, 'LOCATION').text).toBe('incubator 1, shelf 2');
    expect(only(event, 'DESCRIPTION').text).toBe('Leek, lot L-2019-031, 20–30 °C\n4 dishes, 200 seeds, set 2026-11-20');
    expect(only(event, 'URL').raw).toBe('https://seedroom.example/t/T-0204');
    expect(eventsOf([tray()])[0]?.properties.map(({ name }) => name)).not.toContain('URL');
  });

  it('is without people: neither organiser nor guests', () => {
    const names = eventsOf([tray()]).flatMap(({ properties }) => properties.map(({ name }) => name));
    for (const name of ['ORGANIZER', 'ATTENDEE', 'CONTACT']) expect(names).not.toContain(name);
  });
});

describe('read again', () => {
  const uidOf = (event: Component) => only(event, 'UID').raw;

  it('what was counted is gone, and what is still to come keeps its id', () => {
    const before = eventsOf([tray()]);
    const after = eventsOf([tray({ lastCountedOn: '2026-11-26' })]);
    expect(after.map(uidOf)).toEqual(before.slice(1).map(uidOf));
    expect(new Set(before.map(uidOf)).size).toBe(before.length);
  });

  it('a late count stretches to today, is called late, and is a later revision on every day', () => {
    const late = tray({ firstCountOn: '2026-11-23', countEveryDays: null });
    const [event, last] = eventsOf([late]) as [Component, Component];
    expect([dateOf(event, 'DTSTART'), dateOf(event, 'DTEND')]).toEqual(['2026-11-23', '2026-11-26']);
    expect(summary(event)).toBe('Late: Count T-0204 Skerry Winter');
    expect(only(event, 'SEQUENCE').raw).toBe('2');
    expect(only(event, 'LAST-MODIFIED').raw).toBe('20261125T000000Z');
    expect(only(last, 'SEQUENCE').raw).toBe('0');
    const [tomorrow] = readCalendar(written([late], null, '2026-11-26')).components as [Component];
    expect(uidOf(tomorrow)).toBe(uidOf(event));
    expect(only(tomorrow, 'SEQUENCE').raw).toBe('3');
  });

  it('a changed plan is a later revision, however late the count was', () => {
    const late = tray({ firstCountOn: '2026-11-01', countEveryDays: null });
    const revision = (of: TrayUnderWay) => Number(only(eventsOf([of])[0] as Component, 'SEQUENCE').raw);
    expect(revision(tray({ version: 2 }))).toBeGreaterThan(revision(late));
  });

  it('a tray of which every seed is classed is to be closed, once, from its last count to today', () => {
    const events = eventsOf([tray({ toClose: true, lastCountedOn: '2026-11-24', remaining: 0 })]);
    expect(events.map(summary)).toEqual(['Close T-0204 Skerry Winter: every seed is classed']);
    expect(dateOf(events[0] as Component, 'DTSTART')).toBe('2026-11-24');
    expect(dateOf(events[0] as Component, 'DTEND')).toBe('2026-11-26');
  });
});

describe('whatever the names', () => {
  it('lines are folded between letters at 75 octets, and come back as they were', () => {
    const accessionName = 'Łódź Äpfelgrün ß, née Señorita; \\ Капуста чорна листова 🌱🌱🌱 of the third generation';
    const [event] = eventsOf([tray({ accessionName, place: 'Капуста\tчорна' })]) as [Component];
    expect(summary(event)).toBe(`Count T-0204 ${accessionName}`);
    expect(only(event, 'LOCATION').text).toBe('Капуста чорна');
  });

  it('no name adds a line of its own or breaks the calendar', () => {
    const name = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 120 }).map((text) => `${text}\r\nEND:VEVENT`);
    fc.assert(
      fc.property(name, name, name, (accessionName, place, bankName) => {
        const text = countsCalendar({
          trays: [tray({ accessionName, place })],
          bankName,
          bankAddress: null,
          today: TODAY,
          now: NOW,
        });
        const calendar = readCalendar(text);
        expect(calendar.components).toHaveLength(4);
        expect(only(calendar, 'X-WR-CALNAME').text).toBe(`Counts, ${bankName}`.replace(/\p{Cc}+/gu, ' ').trim());
      }),
      { numRuns: 300 },
    );
  });

  it('an empty bank has an empty calendar', () => {
    expect(eventsOf([])).toEqual([]);
  });
});

describe('in any time zone of the server', () => {
  const before = process.env.TZ;
  afterEach(() => {
    if (before === undefined) delete process.env.TZ;
    else process.env.TZ = before;
  });

  it.each(['Pacific/Kiritimati', 'Pacific/Pago_Pago', 'America/Santiago', 'Asia/Kolkata'])(
    '%s shifts no day',
    (zone) => {
      const utc = written([tray()]);
      process.env.TZ = zone;
      expect(new Date(2026, 10, 25).toISOString()).not.toBe('2026-11-25T00:00:00.000Z');
      expect(written([tray()])).toBe(utc);
      expect(eventsOf([tray()]).map((event) => dateOf(event, 'DTSTART'))).toEqual(countDays(PLAN));
    },
  );
});

it('every planned day of any plan is an event, before anything was counted', () => {
  const plan = fc.record({
    first: fc.integer({ min: 0, max: 20 }),
    span: fc.integer({ min: 0, max: 30 }),
    step: fc.option(fc.integer({ min: 1, max: 9 })),
  });
  fc.assert(
    fc.property(plan, ({ first, span, step }) => {
      const schedule = {
        firstCountOn: addDays(TODAY, first),
        finalCountOn: addDays(TODAY, first + span),
        countEveryDays: step,
      };
      expect(eventsOf([tray(schedule)]).map((event) => dateOf(event, 'DTSTART'))).toEqual(countDays(schedule));
    }),
  );
});
