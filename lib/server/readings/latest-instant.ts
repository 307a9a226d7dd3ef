import 'server-only';
import { environment } from '../env';

/** Clocks of loggers and computers do not quite agree. */
const SLACK_SECONDS = 600;
const SECONDS_PER_DAY = 86_400;

/** After this a reading lies in the future: seconds since 1970 UTC. With a fixed today, its end in UTC. */
export function latestInstant(): number {
  const fixed = environment().HILUM_TODAY;
  if (fixed) return Date.parse(`${fixed}T00:00:00Z`) / 1000 + SECONDS_PER_DAY;
  return Math.floor(Date.now() / 1000) + SLACK_SECONDS;
}
