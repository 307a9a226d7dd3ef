import type { NextCount } from '@/lib/domain/germination/bench/count-days';
import { formatDate } from './figures';

/**
 * When a tray is counted next: 'today', 'today, the last count', '3 days late', '2 Dec 2026'.
 *
 * Checked in tests/app/next-count-words.test.ts
 */
export function nextCountInWords({ on, final, daysLate }: NextCount, today: string): string {
  const when = daysLate > 0 ? lateInWords(daysLate) : on === today ? 'today' : formatDate(on);
  return final ? `${when}, the last count` : when;
}

/** '1 day late'. */
export const lateInWords = (days: number): string => `${days} ${days === 1 ? 'day' : 'days'} late`;
