import { format } from 'date-fns';
import { environment } from './env';

/** Today's calendar date at this computer, 'YYYY-MM-DD'. The only place that reads the clock for a date. */
export function today(): string {
  return environment().HILUM_TODAY ?? format(new Date(), 'yyyy-MM-dd');
}
