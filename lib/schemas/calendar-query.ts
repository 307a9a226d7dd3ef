import { z } from 'zod';
import { isCalendarDate } from '../domain/calendar/calendar-date';

/** The address of the calendar of counts. What cannot be read is left out rather than refused. */
export const calendarQuerySchema = z.object({
  /** a day in the first of the weeks shown; left out: today */
  from: z.string().refine(isCalendarDate).optional().catch(undefined),
});
