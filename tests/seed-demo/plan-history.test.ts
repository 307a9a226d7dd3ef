import { describe, expect, test } from 'vitest';
import { demoCalendar } from '@/seed-demo/generators/demo-calendar';
import { type PlannedLot, planHistory } from '@/seed-demo/generators/plan-history';
import { ACCESSION_STORIES } from '@/seed-demo/scenarios/brannasay';

const TODAYS = ['2026-10-31', '2026-11-01', '2026-11-25', '2027-01-02', '2027-07-15', '2028-02-29'];

describe.each(TODAYS)('the plan counted back from %s', (today) => {
  const events = planHistory(ACCESSION_STORIES, demoCalendar(today));

  test('runs in order of date and never after today', () => {
    const days = events.map((event) => event.on);
    expect([...days].sort()).toEqual(days);
    expect((days.at(-1) as string) <= today).toBe(true);
    for (const event of events) if (event.kind === 'test') expect(event.finishedOn <= today).toBe(true);
  });

  test('a lot is stored after its harvest and before anything else happens to it', () => {
    const stored = new Set<PlannedLot>();
    for (const event of events) {
      if (event.kind === 'accession') continue;
      if (event.kind === 'lot') {
        expect(event.lot.storedOn >= event.lot.harvestedOn).toBe(true);
        stored.add(event.lot);
      } else expect(stored.has(event.lot), `${event.kind} of ${event.lot.key}`).toBe(true);
    }
  });

  test('stays follow each other in time', () => {
    for (const event of events) {
      if (event.kind !== 'lot') continue;
      const days = event.lot.placements.map((place) => place.from);
      expect([...days].sort(), event.lot.key).toEqual(days);
    }
  });
});

test('fifteen years, fourteen crops, about forty accessions and a hundred and twenty lots', () => {
  const events = planHistory(ACCESSION_STORIES, demoCalendar('2026-11-25'));
  const lots = events.filter((event) => event.kind === 'lot').length;
  expect(lots).toBeGreaterThanOrEqual(115);
  expect(lots).toBeLessThanOrEqual(130);
  expect(ACCESSION_STORIES.length).toBeGreaterThanOrEqual(38);
  expect(ACCESSION_STORIES.length).toBeLessThanOrEqual(45);
  expect(new Set(ACCESSION_STORIES.map((story) => story.crop)).size).toBe(14);
  expect((events[0]?.on ?? '') < '2013').toBe(true);
});

test('donors are named by what they do, never by a person’s name', () => {
  for (const { donor, name } of ACCESSION_STORIES) expect(donor, name).toMatch(/^(the|a|an) [a-z]/);
});
