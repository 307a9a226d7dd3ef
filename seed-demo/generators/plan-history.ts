/** Turns the scenario into what happened on which day, in order, as it would have been written down at the time. */
import { addDays, type CalendarDate } from '../../lib/domain/calendar/calendar-date';
import { getCropFacts } from '../../lib/domain/reference/all-crops';
import { normalQuantile } from '../../lib/domain/statistics/normal-distribution';
import { randomFor } from '../random';
import { CROP_HABITS } from '../scenarios/crop-habits';
import type { AccessionStory, LotStory, PlaceStory, TestStory } from '../scenarios/story';
import type { DemoCalendar } from './demo-calendar';

export interface PlannedPlacement extends PlaceStory {
  from: CalendarDate;
}

export interface PlannedLot {
  /** names its stream of chance */
  key: string;
  accession: AccessionStory;
  story: LotStory;
  generation: number;
  harvestedOn: CalendarDate;
  storedOn: CalendarDate;
  seeds: number;
  thousandSeedWeightG: number;
  /** every place it lay in, the first from the day it was stored */
  placements: PlannedPlacement[];
  initialProbit: number;
  rate: number;
}

export type PlannedEvent = { on: CalendarDate } & (
  | { kind: 'accession'; accession: AccessionStory }
  | { kind: 'lot'; lot: PlannedLot }
  | { kind: 'move'; lot: PlannedLot; to: PlannedPlacement }
  | { kind: 'duplicate'; lot: PlannedLot; seeds: number }
  | { kind: 'withdrawal'; lot: PlannedLot; reason: 'sowing' | 'sharing' | 'loss'; seeds: number; note: string }
  | { kind: 'test'; lot: PlannedLot; test: TestStory; finishedOn: CalendarDate }
);

const ORDER_WITHIN_A_DAY = ['accession', 'lot', 'move', 'duplicate', 'withdrawal', 'test'] as const;
const DAYS_TO_CLEAN = { from: 22, to: 36 };
const DAYS_TO_THE_CUPBOARD = 9;
const DAYS_IN_THE_CUPBOARD = 30;
const DUPLICATES_LEAVE_ON = '10-21';
const TESTS_BEGIN_ON = '01-12';
const DAYS_OF_THE_TESTING_WINTER = 55;
/** Five cold days before a test of cereals. */
const DAYS_OF_CHILLING = 5;

/**
 * @param stories   the accessions
 * @param calendar  the demo's dates
 * @returns events in order of date; of one day, in the order in which they can happen
 * Checked in tests/seed-demo/plan-history.test.ts
 */
export function planHistory(stories: readonly AccessionStory[], calendar: DemoCalendar): PlannedEvent[] {
  const events = stories.flatMap((accession) => {
    const lots = planLots(accession, calendar);
    const [first] = lots;
    if (!first) throw new Error(`${accession.name} has no lots`);
    return [
      { on: first.storedOn, kind: 'accession' as const, accession },
      ...lots.flatMap((lot, index) => [
        ...eventsOfLot(lot, calendar),
        ...(index === 0 ? [] : [sowingOf(lot, lots, calendar)]),
      ]),
    ];
  });
  const rank = (event: PlannedEvent) => ORDER_WITHIN_A_DAY.indexOf(event.kind);
  // A stable sort: what shares day and kind stays in the order of the scenario.
  return events.sort((a, b) => (a.on === b.on ? rank(a) - rank(b) : a.on < b.on ? -1 : 1));
}

function planLots(accession: AccessionStory, calendar: DemoCalendar): PlannedLot[] {
  const habit = CROP_HABITS[accession.crop];
  const generations: number[] = [];
  return accession.lots.map((story, index) => {
    const key = `lot ${accession.crop} ${accession.name} ${story.season}`;
    const random = randomFor(key);
    generations.push(index === 0 ? 0 : (generations[story.grownFrom ?? index - 1] as number) + 1);
    const harvestedOn = calendar.notAfterToday(
      addDays(calendar.dayIn(story.season, habit.harvest), random.wholeBetween(-8, 8)),
    );
    const cleaning = random.wholeBetween(DAYS_TO_CLEAN.from, DAYS_TO_CLEAN.to);
    const storedOn = calendar.notAfterToday(addDays(harvestedOn, story.viaCupboard ? DAYS_TO_THE_CUPBOARD : cleaning));
    const kept: PlaceStory = story.kept ?? accession.kept;
    const placements: PlannedPlacement[] = story.viaCupboard
      ? [
          { store: 'drying-cupboard', container: 'open-tray', from: storedOn },
          { ...kept, from: calendar.notAfterToday(addDays(storedOn, DAYS_IN_THE_CUPBOARD)) },
        ]
      : [{ ...kept, from: storedOn }];
    for (const { season, on, ...place } of story.moved ?? []) {
      placements.push({ ...place, from: calendar.dayIn(season, on) });
    }
    const usualSeeds = index === 0 ? habit.seedsReceived : habit.seedsHarvested;
    return {
      key,
      accession,
      story,
      generation: generations[index] as number,
      harvestedOn,
      storedOn,
      seeds: story.seeds ?? Math.round((usualSeeds * random.between(0.75, 1.25)) / 10) * 10,
      thousandSeedWeightG: Number((habit.thousandSeedWeightG * random.between(0.92, 1.08)).toPrecision(3)),
      placements,
      initialProbit: story.initial === undefined ? 1.85 + 0.25 * random.normal() : normalQuantile(story.initial),
      rate: story.rate ?? Math.exp(0.05 + 0.25 * random.normal()),
    };
  });
}

function eventsOfLot(lot: PlannedLot, calendar: DemoCalendar): PlannedEvent[] {
  const { story } = lot;
  const events: PlannedEvent[] = [{ on: lot.storedOn, kind: 'lot', lot }];
  for (const to of lot.placements.slice(1)) events.push({ on: to.from, kind: 'move', lot, to });
  if (story.duplicated) {
    const { season, seeds } = story.duplicated;
    events.push({ on: calendar.dayIn(season, DUPLICATES_LEAVE_ON), kind: 'duplicate', lot, seeds });
  }
  for (const { season, on, seeds, note } of story.shared ?? []) {
    events.push({ on: calendar.dayIn(season, on), kind: 'withdrawal', reason: 'sharing', lot, seeds, note });
  }
  if (story.lost) {
    const { season, on, seeds, note } = story.lost;
    events.push({ on: calendar.dayIn(season, on), kind: 'withdrawal', reason: 'loss', lot, seeds, note });
  }
  for (const entry of story.tested ?? []) events.push(plannedTest(lot, entry, calendar));
  return events;
}

function plannedTest(lot: PlannedLot, entry: number | TestStory, calendar: DemoCalendar): PlannedEvent {
  const test: TestStory = typeof entry === 'number' ? { season: entry } : entry;
  const random = randomFor(`day of ${lot.key} test ${test.season} ${test.on ?? ''}`);
  const on = test.on
    ? calendar.dayIn(test.season, test.on)
    : addDays(calendar.dayIn(test.season, TESTS_BEGIN_ON), random.wholeBetween(0, DAYS_OF_THE_TESTING_WINTER));
  const facts = getCropFacts(lot.accession.crop);
  const chilling = facts?.family === 'Poaceae' ? DAYS_OF_CHILLING : 0;
  const days = (facts?.germination[0]?.finalCountDays ?? 14) + chilling;
  return { on, kind: 'test', lot, test, finishedOn: addDays(on, days) };
}

/** The seed that a lot was grown from left its parent's packet in the spring of that season, or the year before. */
function sowingOf(lot: PlannedLot, lots: readonly PlannedLot[], calendar: DemoCalendar): PlannedEvent {
  const habit = CROP_HABITS[lot.accession.crop];
  const parent = lots[lot.story.grownFrom ?? lots.indexOf(lot) - 1] as PlannedLot;
  const on = calendar.dayIn(lot.story.season + (habit.biennial ? 1 : 0), habit.sowing);
  const note = `Sown to regrow it, season ${on.slice(0, 4)}`;
  return { on, kind: 'withdrawal', reason: 'sowing', lot: parent, seeds: lot.story.sown ?? habit.seedsSown, note };
}
