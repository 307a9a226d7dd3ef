import { z } from 'zod';
import { isCalendarDate } from '../domain/calendar/calendar-date';

/** Weeks are reckoned on from it, and a calendar ends with the year 9999. */
const LAST = '9990-01-01';

/** The address of the calendar of counts. What cannot be read is left out rather than refused. */
export const calendarQuerySchema = z.object({
  /** a day in the first of the weeks shown; left out: today */
  from: z
    .string()
    .refine((text) => isCalendarDate(text) && text < LAST)
    .optional()
    .catch(undefined),
});
