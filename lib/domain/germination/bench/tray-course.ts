/*
 * The counts of a tray as a time course: what the curve of germination over days is drawn from.
 */
import { type CalendarDate, daysBetween } from '../../calendar/calendar-date';
import type { DishCounts, IntervalCount } from '../time-course/dish-counts';
import type { DishState } from './dish-state';
import { seedsFound } from './tray-count';

export type TrayCourse =
  | { ok: true; dishes: DishCounts[]; lastCountedOn: CalendarDate }
  | {
      ok: false;
      /** nothing was counted after the day it was set; more seed was counted than set; a seedling on the day of setting */
      reason: 'nothing-counted' | 'too-many' | 'found-too-early';
    };

/**
 * Counts by day as the time-course functions take them. Day 0 is the day the tray was set. Only normal seedlings count
 * as germinated. Seed taken out as abnormal, hard, fresh or dead will never be one: it counts as not germinated until the
 * tray's last count, not only until it was taken out, since a dead seed removed early is no seed lost from view.
 *
 * @param states  every dish of the tray, from dishStates
 * @param setOn   calendar day on which it was set
 * @returns dishes that were looked at, in order of position; a dish never looked at says nothing and is left out
 * Checked in tests/domain/germination/bench/tray-course.test.ts
 */
export function trayCourse(states: readonly DishState[], setOn: CalendarDate): TrayCourse {
  const dayOf = (on: CalendarDate) => daysBetween(setOn, on);
  const counted = states.flatMap(({ days }) => days).filter(({ found }) => found !== null);
  const last = counted.reduce<string | null>((latest, { on }) => (latest === null || on > latest ? on : latest), null);
  if (last === null || dayOf(last) <= 0) return { ok: false, reason: 'nothing-counted' };
  if (states.some(({ remaining }) => remaining < 0)) return { ok: false, reason: 'too-many' };
  if (counted.some(({ on, found }) => dayOf(on) <= 0 && (found?.normal ?? 0) > 0)) {
    return { ok: false, reason: 'found-too-early' };
  }
  const dishes = states.flatMap(({ dish, days, totals, remaining }): DishCounts[] => {
    const inspections: IntervalCount[] = [];
    let seen = 0;
    for (const { on, found } of days) {
      const day = dayOf(on);
      if (found === null || day <= 0) continue;
      inspections.push({ fromDay: seen, toDay: day, germinated: found.normal });
      seen = day;
    }
    if (inspections.length === 0) return [];
    const takenOutOtherwise = seedsFound(totals) - totals.normal;
    inspections.push({ fromDay: dayOf(last), toDay: Number.POSITIVE_INFINITY, germinated: takenOutOtherwise });
    inspections.push({ fromDay: seen, toDay: Number.POSITIVE_INFINITY, germinated: remaining });
    return [{ seeds: dish.seeds, inspections }];
  });
  return { ok: true, dishes, lastCountedOn: last };
}
