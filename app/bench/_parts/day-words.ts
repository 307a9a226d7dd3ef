import { formatDate } from '@/app/_format/figures';
import { daysBetween } from '@/lib/domain/calendar/calendar-date';
import type { TrayView } from '../_store/bench-view';

/** 'today', or 'on 20 Nov': a bench has no old years. */
export const onDayInWords = (on: string, today: string): string => (on === today ? 'today' : `on ${shortDay(on)}`);

/** '20 Nov'. */
export const shortDay = (on: string): string => formatDate(on).replace(/ \d+$/, '');

/**
 * When a tray is to be counted: 'final count, 2 days late', 'due today', 'count on 2 Dec'.
 *
 * Checked in tests/app/bench/day-words.test.ts
 */
export function dueInWords({ next, countedToday }: TrayView, today: string): string {
  const which = next.final ? 'final count' : 'count';
  if (countedToday && next.on <= today) return 'final count made';
  if (next.daysLate > 0) return `${which}, ${next.daysLate} ${next.daysLate === 1 ? 'day' : 'days'} late`;
  if (next.on === today) return next.final ? 'final count today' : 'due today';
  return `${which} on ${shortDay(next.on)}`;
}

/** 'day 7 of 14': how long a tray has stood, and until the final count. */
export function dayOfTray({ tray }: TrayView, today: string): string {
  return `day ${daysBetween(tray.setOn, today)} of ${daysBetween(tray.setOn, tray.finalCountOn)}`;
}
