import 'server-only';
import { log } from '../log';
import { judgeWhatIsStale } from './keep-fresh';

/** Scripts send one store after the other: lots are judged once they have come to rest. */
const AFTER_QUIET_MS = 5_000;
const AT_LATEST_MS = 60_000;

const holder = globalThis as typeof globalThis & { hilumJudgeSoon?: { timer: NodeJS.Timeout; since: number } };

/**
 * Judges what is marked stale a little later, once however often it is asked for meanwhile. A stop in between loses
 * nothing: the lots stay marked, and are judged at the next start.
 */
export function judgeSoon(): void {
  const since = holder.hilumJudgeSoon?.since ?? Date.now();
  clearTimeout(holder.hilumJudgeSoon?.timer);
  const wait = Math.max(0, Math.min(AFTER_QUIET_MS, since + AT_LATEST_MS - Date.now()));
  const timer = setTimeout(() => {
    holder.hilumJudgeSoon = undefined;
    judgeWhatIsStale().catch((error: unknown) => log.error({ error }, 'judging after readings came failed'));
  }, wait);
  timer.unref();
  holder.hilumJudgeSoon = { timer, since };
}
