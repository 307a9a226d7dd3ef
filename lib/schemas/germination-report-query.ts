/** What the address of the report over all tests says: a period, and which page of it. Anything unreadable is not said. */
import { z } from 'zod';
import { isCalendarDate } from '../domain/calendar/calendar-date';
import { EARLIEST_DATE } from './limits';

/** Next hands a parameter that is given twice as an array: the first counts. */
const first = (value: unknown) => (Array.isArray(value) ? value[0] : value);
const day = z
  .preprocess(
    first,
    z.string().refine((date) => isCalendarDate(date) && date >= EARLIEST_DATE),
  )
  .catch('');

/**
 * @param today  calendar date; without a period the report is of this year, up to today
 * @returns a schema giving a period with from <= to, both days in it
 * Checked in tests/schemas/germination-report-query.test.ts
 */
export const germinationReportQuery = (today: string) =>
  z
    .object({
      from: day,
      to: day,
      page: z.preprocess(first, z.coerce.number().int().min(1).max(100_000)).catch(1),
      /** every test on one page, for printing */
      whole: z.preprocess((value) => first(value) === 'yes', z.boolean()),
    })
    .transform(({ from, to, ...rest }) => {
      const ends = [from || `${(to || today).slice(0, 4)}-01-01`, to || (from > today ? from : today)].sort();
      return { from: ends[0] as string, to: ends[1] as string, ...rest };
    });

export type GerminationReportQuery = z.output<ReturnType<typeof germinationReportQuery>>;

/** From a day to a day, both in it. */
export type Period = Pick<GerminationReportQuery, 'from' | 'to'>;
