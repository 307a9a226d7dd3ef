import 'server-only';
import type Database from 'better-sqlite3';
import { fromEpochDay, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { SECONDS_PER_DAY, STANDARD_GAP_HOURS } from '@/lib/domain/longevity/store-day';
import { connections } from '../database/connections';
import { storeClimates } from '../judging/store-climates';
import { today } from '../today';

/** Where the climate that seed in a store is reckoned with comes from today: a logger, or what the store is meant to be. */
export type ClimateSource =
  | {
      kind: 'logged';
      /** the store around it whose logger counts; null: its own */
      inStore: string | null;
      lastOn: string;
      /** readings stop too long ago to count today: the target has stood in since */
      stopped: boolean;
    }
  | {
      kind: 'target';
      /** the store around it whose target counts; null: its own */
      ofStore: string | null;
    };

/**
 * The source of every store's climate today, by store id: three statements, however many stores there are.
 */
export function climateSources(): Map<string, ClimateSource> {
  const { rows } = connections();
  const climates = storeClimates(rows);
  const last = lastReadings(rows);
  const logsBefore = toEpochDay(today()) * SECONDS_PER_DAY - STANDARD_GAP_HOURS * 3600;
  const ids = rows.prepare<[], string>(`SELECT "id" FROM "Store"`).pluck().all();
  return new Map(
    ids.map((id): [string, ClimateSource] => {
      const { loggedStoreId, targetStoreId } = climates.sourceOf(id);
      const at = loggedStoreId === null ? undefined : last.get(loggedStoreId);
      if (loggedStoreId === null || at === undefined) {
        return [id, { kind: 'target', ofStore: targetStoreId === id ? null : climates.nameOf(targetStoreId) }];
      }
      return [
        id,
        {
          kind: 'logged',
          inStore: loggedStoreId === id ? null : climates.nameOf(loggedStoreId),
          lastOn: fromEpochDay(Math.floor(at / SECONDS_PER_DAY)),
          stopped: at < logsBefore,
        },
      ];
    }),
  );
}

function lastReadings(rows: Database.Database): Map<string, number> {
  return new Map(
    rows
      .prepare<[], { id: string; at: number | null }>(
        // By store, so that each is one step to the end of the primary key.
        `SELECT s."id", (SELECT r."atEpochSeconds" FROM "Reading" r WHERE r."storeId" = s."id" AND NOT r."takenBack"
           ORDER BY r."atEpochSeconds" DESC LIMIT 1) AS "at" FROM "Store" s`,
      )
      .all()
      .flatMap(({ id, at }) => (at === null ? [] : [[id, at] as const])),
  );
}
