import 'server-only';
import { connections } from '../database/connections';
import { enqueueWrite } from '../database/write-queue';
import { log } from '../log';
import { today } from '../today';
import { judgeLots } from './judge-lots';

/**
 * Judgements hold for one day. When the server starts, and a minute after every midnight, whatever was not judged today
 * (a new day, a crash between a write and its judging) is judged before anybody asks.
 */
export async function keepJudgementsFresh(): Promise<void> {
  const holder = globalThis as typeof globalThis & { hilumMidnight?: NodeJS.Timeout };
  clearTimeout(holder.hilumMidnight);
  try {
    await judgeWhatIsStale();
  } catch (error) {
    log.error({ error }, 'judging the collection failed');
  }
  holder.hilumMidnight = setTimeout(() => void keepJudgementsFresh(), untilAfterMidnight());
  holder.hilumMidnight.unref();
}

/** Judges the lots that have no judgement of today. */
export async function judgeWhatIsStale(): Promise<number> {
  return enqueueWrite(async () => {
    const { bulk } = connections();
    const day = today();
    const stale = bulk
      .prepare<[string], { id: string }>(
        `SELECT l."id" FROM "Lot" l LEFT JOIN "LotJudgement" j ON j."lotId" = l."id"
         WHERE j."lotId" IS NULL OR j."judgedOn" <> ?`,
      )
      .all(day);
    if (stale.length > 0) {
      await judgeLots(
        bulk,
        stale.map((row) => row.id),
        day,
      );
    }
    return stale.length;
  });
}

function untilAfterMidnight(): number {
  const now = new Date();
  const next = new Date(now.getFullYear(), now.getMonth(), now.getDate() + 1, 0, 1);
  return next.getTime() - now.getTime();
}
