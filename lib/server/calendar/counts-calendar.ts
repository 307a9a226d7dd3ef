import 'server-only';
import ical, { ICalCalendarMethod, type ICalEventData, ICalEventTransparency } from 'ical-generator';
import { addDays, daysBetween } from '@/lib/domain/calendar/calendar-date';
import type { NextCount } from '@/lib/domain/germination/bench/count-days';
import { temperaturesInDegrees } from '@/lib/domain/germination/bench/tray-method';
import { trayCode } from '@/lib/domain/labels/code-text';
import type { TrayUnderWay } from '../queries/trays-under-way';

/** How often calendar programs are asked to look again. Some ask less often whatever they are told. */
const REFRESH_SECONDS = 3_600;
/** Changes of a plan count more than another day's delay, and no count is late by so many days. */
const MOST_DAYS_LATE = 999;

interface Wanted {
  trays: readonly TrayUnderWay[];
  bankName: string;
  /** where phones reach this bank, null when they do not */
  bankAddress: string | null;
  /** calendar date */
  today: string;
  /** when the calendar is made */
  now: Date;
}

/**
 * When trays are counted, as an iCalendar object (RFC 5545) for calendar programs: an all-day event for each count that is
 * still to be made, and one for each tray that waits to be closed. Days are DATE values, which no time zone shifts.
 *
 * Each event bears the id of its tray and day, so that a program that reads again changes it instead of adding another.
 * A count that is late stretches from its day to today: otherwise nobody would see it. What was counted is gone. It names
 * seed and trays, never a person.
 *
 * Checked in tests/server/calendar/counts-calendar.test.ts
 */
export function countsCalendar({ trays, bankName, bankAddress, today, now }: Wanted): string {
  const calendar = ical({
    prodId: '//Hilum//Counts at the bench//EN',
    method: ICalCalendarMethod.PUBLISH,
    // The library writes a name as it is; in a TEXT value these signs are escaped (RFC 5545, section 3.3.11).
    name: printable(`Counts, ${bankName}`).replace(/[\\;,]/g, (sign) => `\\${sign}`),
    ttl: REFRESH_SECONDS,
  });
  for (const tray of trays) {
    const events = tray.toClose ? [closing(tray, today)] : tray.ahead.map((count) => counting(tray, count, today));
    for (const event of events) calendar.createEvent({ ...event, ...about(tray, bankAddress, today), stamp: now });
  }
  // Every line ends with a line break, the last as well, which the library leaves out.
  return `${calendar.toString()}\r\n`;
}

function counting(tray: TrayUnderWay, { on, final }: NextCount, today: string): ICalEventData {
  const late = on < today ? daysBetween(on, today) : 0;
  const what = final ? 'Last count of' : 'Count';
  return {
    id: `${tray.id}-${on}`,
    ...allDay(on, late),
    sequence: revision(tray, late),
    summary: printable(`${late > 0 ? 'Late: ' : ''}${what} ${tray.number} ${tray.accessionName}`),
  };
}

function closing(tray: TrayUnderWay, today: string): ICalEventData {
  const since = tray.lastCountedOn ?? today;
  const days = Math.max(0, daysBetween(since, today));
  return {
    id: `${tray.id}-close`,
    ...allDay(since, days),
    sequence: revision(tray, days),
    summary: printable(`Close ${tray.number} ${tray.accessionName}: every seed is classed`),
  };
}

/** From a day on, so many days longer; the end of a DATE is the day after (RFC 5545, section 3.6.1). */
const allDay = (from: string, days: number) => ({ allDay: true, start: from, end: addDays(from, days + 1) });

/** Higher whenever the event becomes another: its plan was changed, or it is late by another day. */
const revision = ({ version }: TrayUnderWay, days: number) =>
  (version - 1) * (MOST_DAYS_LATE + 1) + Math.min(days, MOST_DAYS_LATE);

function about(tray: TrayUnderWay, bankAddress: string | null, today: string) {
  const { cropName, lotNumber, dishes, seeds, temperatures, place, setOn, number, changedAt } = tray;
  const changed = new Date(changedAt);
  const dawn = new Date(`${today}T00:00:00Z`);
  const lines = [
    [cropName, `lot ${lotNumber}`, temperatures && temperaturesInDegrees(temperatures)].filter(Boolean).join(', '),
    `${dishes} ${dishes === 1 ? 'dish' : 'dishes'}, ${seeds} seeds, set ${setOn}`,
  ];
  return {
    description: lines.map(printable).join('\n'),
    location: place === null ? null : printable(place),
    url: bankAddress === null ? null : trayCode(number, null, bankAddress),
    // A count does not fill the day: whoever is asked for a date is still free.
    transparency: ICalEventTransparency.TRANSPARENT,
    // What is late is another event on every day.
    lastModified: tray.next.on < today && changed < dawn ? dawn : changed,
  };
}

/** Signs that are not printed have no place in a line of a calendar. */
const printable = (text: string) => text.replace(/\p{Cc}+/gu, ' ').trim();
