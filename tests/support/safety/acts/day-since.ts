import { addDays, daysBetween } from '@/lib/domain/calendar/calendar-date';
import { today } from '@/lib/server/today';
import type { Chooser } from '../chooser';

/** Today, or a day since `earliest`. */
export function daySince(choose: Chooser, earliest: string): string {
  if (choose.whole(0, 1) === 0) return '';
  return addDays(earliest, choose.whole(0, Math.max(0, daysBetween(earliest, today()))));
}
