/*
 * What is to be counted on which day, put together as it is done: trays of one temperature and place in one go.
 */
import type { CalendarDate } from '../../calendar/calendar-date';
import type { NextCount } from './count-days';

export interface AgendaTray {
  number: string;
  place: string | null;
  temperatures: string | null;
  /** counts still to be made, in order (countsAhead) */
  ahead: readonly NextCount[];
  /** nothing is left to count */
  toClose: boolean;
}

export interface AgendaEntry<Tray extends AgendaTray> {
  tray: Tray;
  count: NextCount;
}

/** Trays that stand together. */
export interface AgendaGroup<Tray extends AgendaTray> {
  temperatures: string | null;
  place: string | null;
  /** by number */
  entries: AgendaEntry<Tray>[];
}

export interface CountAgenda<Tray extends AgendaTray> {
  /** counts that should have been made before today, whatever the stretch */
  late: AgendaGroup<Tray>[];
  /** days of the stretch on which something is to be counted, in order; without what is late */
  days: { on: CalendarDate; groups: AgendaGroup<Tray>[] }[];
}

/**
 * The agenda of a stretch of days. Groups are in the order of temperature, then place; what has neither comes last.
 *
 * @param trays       open trays; those that wait to be closed are left out
 * @param from,until  first and last calendar date of the stretch
 * Checked in tests/domain/germination/bench/count-agenda.test.ts
 */
export function countAgenda<Tray extends AgendaTray>(
  trays: readonly Tray[],
  { from, until }: { from: CalendarDate; until: CalendarDate },
): CountAgenda<Tray> {
  const late: AgendaEntry<Tray>[] = [];
  const byDay = new Map<CalendarDate, AgendaEntry<Tray>[]>();
  for (const tray of trays) {
    if (tray.toClose) continue;
    for (const count of tray.ahead) {
      if (count.daysLate > 0) late.push({ tray, count });
      else if (count.on >= from && count.on <= until) {
        const entries = byDay.get(count.on);
        if (entries) entries.push({ tray, count });
        else byDay.set(count.on, [{ tray, count }]);
      }
    }
  }
  const days = [...byDay].sort(([one], [other]) => compare(one, other));
  return { late: grouped(late), days: days.map(([on, entries]) => ({ on, groups: grouped(entries) })) };
}

function grouped<Tray extends AgendaTray>(entries: readonly AgendaEntry<Tray>[]): AgendaGroup<Tray>[] {
  const groups = new Map<string, AgendaGroup<Tray>>();
  for (const entry of [...entries].sort((one, other) => compare(one.tray.number, other.tray.number))) {
    const { temperatures, place } = entry.tray;
    const key = JSON.stringify([temperatures, place]);
    const group = groups.get(key);
    if (group) group.entries.push(entry);
    else groups.set(key, { temperatures, place, entries: [entry] });
  }
  return [...groups.values()].sort(
    (one, other) => compareLast(one.temperatures, other.temperatures) || compareLast(one.place, other.place),
  );
}

const compare = (one: string, other: string) => (one < other ? -1 : one > other ? 1 : 0);

function compareLast(one: string | null, other: string | null): number {
  if (one === null || other === null) return one === other ? 0 : one === null ? 1 : -1;
  return compare(one, other);
}
