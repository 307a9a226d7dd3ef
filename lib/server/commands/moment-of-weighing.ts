import { epochSecondsOf, localMinute } from '../local-time';
import { fieldError } from './field-error';

/** A phone's clock may run a little ahead of this computer's. */
const CLOCKS_APART_SECONDS = 300;

/**
 * When a weighing was made: as typed by the seed room's clock, or now.
 *
 * @param typed  'YYYY-MM-DDTHH:mm'; undefined: now
 * @param now    seconds since 1970-01-01T00:00:00Z
 * @returns the same unit, never after now
 * @throws AppError beside `at` when there is no such moment (the clocks went forward) or it lies ahead
 */
export function momentOf(typed: string | undefined, now: number): number {
  if (typed === undefined) return now;
  const at = epochSecondsOf(typed);
  if (at === null) throw fieldError({ at: 'There is no such day and time: check it.' });
  if (at > now + CLOCKS_APART_SECONDS) throw fieldError({ at: 'This lies ahead: leave it empty for now.' });
  return Math.min(at, now);
}

/** '2026-11-20 09:00', by the seed room's clock. */
export const minuteInWords = (epochSeconds: number): string => localMinute(epochSeconds).replace('T', ' ');
