import { dayCounts } from '@/lib/domain/germination/bench/day-counts';
import { type BenchDish, dishStates } from '@/lib/domain/germination/bench/dish-state';
import { closeTray } from '@/lib/server/commands/close-tray';
import { reopenTray } from '@/lib/server/commands/reopen-tray';
import { settleCount } from '@/lib/server/commands/settle-count';
import { writeTrayCounts } from '@/lib/server/commands/write-tray-counts';
import { connections } from '@/lib/server/database/connections';
import { today } from '@/lib/server/today';
import { writtenCount } from '@/lib/server/trays/count-row';
import { seenCounts } from '@/lib/server/trays/seen-counts';
import type { Chooser } from '../chooser';
import { type Act, type Attempt, volunteer } from './act';
import { ids } from './bank-now';

/** What stands between a tray and its test: a day to settle, a slip to take back, the rest to class; then to close it. */
function nextStepOf(trayId: string, choose: Chooser): Attempt {
  const { rows } = connections();
  const dishes = rows
    .prepare<[string], BenchDish>(`SELECT "id", "position", "seeds" FROM "TrayDish" WHERE "trayId" = ?`)
    .all(trayId);
  const counts = rows
    .prepare<[string], Parameters<typeof writtenCount>[0]>(`SELECT * FROM "TrayCount" WHERE "trayId" = ? ORDER BY "id"`)
    .all(trayId)
    .map(writtenCount);
  const days = dayCounts(counts);
  const disagreed = choose.one(days.filter(({ disagree }) => disagree));
  if (disagreed) {
    const settle = `one ${disagreed.standing[0]?.id}`;
    const { dishId, on } = disagreed;
    return volunteer(settleCount, { trayId, dishId, on, version: seenCounts([disagreed]), settle });
  }
  const states = dishStates(dishes, counts);
  const over = states.find(({ remaining }) => remaining < 0)?.days.at(-1);
  const classed = states.every(({ remaining }) => remaining === 0);
  if (classed) return volunteer(closeTray, { trayId });
  const on = over?.on ?? today();
  const version = seenCounts(days.filter((day) => day.on === on));
  // Without a figure for any dish the counts of the day are taken back.
  return volunteer(writeTrayCounts, {
    trayId,
    on,
    version,
    restDead: over ? undefined : 'on',
    dishes: standingOf(over ? [] : days, on),
  });
}

/** What a form shows of a day that was counted already: sent again as it is. */
const standingOf = (days: ReturnType<typeof dayCounts>, on: string) =>
  Object.fromEntries(days.filter((day) => day.on === on && day.found).map(({ dishId, found }) => [dishId, found]));

/** Trays that are brought to their end, and opened again. */
export const TRAY_END_ACTS: Record<string, Act> = {
  'reopen a tray': (choose) => {
    const trayId = choose.one(ids(`SELECT "id" FROM "Tray" WHERE "status" = 'closed' ORDER BY "rowid" DESC LIMIT 3`));
    return trayId === undefined ? null : volunteer(reopenTray, { trayId, reason: 'a dish was read wrong' });
  },
  'finish a tray': (choose) => {
    const trayId = choose.one(
      ids(`SELECT "id" FROM "Tray" t WHERE "status" = 'open'
        ORDER BY (SELECT COUNT(*) FROM "TrayCount" WHERE "trayId" = t."id") DESC, "rowid" DESC LIMIT 2`),
    );
    return trayId === undefined ? null : nextStepOf(trayId, choose);
  },
};
