import 'server-only';
import type { Database } from 'better-sqlite3';
import type { CountSchedule, NextCount } from '@/lib/domain/germination/bench/count-days';
import { countsAhead } from '@/lib/domain/germination/bench/counts-ahead';
import { type BenchDish, dishStates, lastCountedOn, unready } from '@/lib/domain/germination/bench/dish-state';
import type { TrayCount } from '@/lib/domain/germination/bench/tray-count';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import { connections } from '../database/connections';
import { today } from '../today';

/** A tray that is open, as its counts leave it today. */
export interface TrayUnderWay extends CountSchedule {
  id: string;
  number: string;
  lotId: string;
  lotNumber: string;
  accessionId: string;
  accessionName: string;
  cropName: string;
  place: string | null;
  temperatures: string | null;
  setOn: string;
  /** grows with every change of its plan */
  version: number;
  /** ISO 8601 instant of the last thing written of it */
  changedAt: string;
  dishes: number;
  /** seeds set */
  seeds: number;
  /** seeds that still lie there, in all dishes */
  remaining: number;
  lastCountedOn: string | null;
  /** the count it waits for */
  next: NextCount;
  /** `next`, and every planned one after it */
  ahead: NextCount[];
  /** every seed is classed and nothing disagrees: it waits to be closed, not to be counted */
  toClose: boolean;
  /** days of dishes about which counts disagree */
  disagreements: number;
}

type TrayRow = Pick<
  TrayUnderWay,
  | 'id'
  | 'number'
  | 'lotId'
  | 'lotNumber'
  | 'accessionId'
  | 'accessionName'
  | 'cropName'
  | 'place'
  | 'temperatures'
  | 'setOn'
  | 'firstCountOn'
  | 'finalCountOn'
  | 'countEveryDays'
  | 'version'
  | 'changedAt'
>;

interface CountRow extends ClassCounts {
  id: string;
  trayId: string;
  dishId: string;
  on: string;
  counted: number;
  replaces: string;
}

/** Every page shows how many trays wait, so what was worked out serves until something is written or the day turns. */
const known = new WeakMap<Database, { dataVersion: unknown; day: string; trays: readonly TrayUnderWay[] }>();

/**
 * Every open tray with what its counts say, in the order in which trays are walked along: by place, then number. Three
 * statements of one moment, however many trays, and none while nothing has been written since.
 *
 * Checked in tests/server/queries/trays-under-way.test.ts
 */
export function findTraysUnderWay(): readonly TrayUnderWay[] {
  const { rows } = connections();
  const day = today();
  // Another number as soon as any other connection has written: https://sqlite.org/pragma.html#pragma_data_version
  const dataVersion = rows.pragma('data_version', { simple: true });
  const before = known.get(rows);
  if (before && before.dataVersion === dataVersion && before.day === day) return before.trays;
  const trays = readTrays(rows, day);
  known.set(rows, { dataVersion, day, trays });
  return trays;
}

/** How many trays wait for somebody: beside the places, and on Today. */
export function countTraysWaiting(): { toCount: number; toClose: number; disagreeing: number } {
  const trays = findTraysUnderWay();
  const day = today();
  return {
    toCount: trays.filter((tray) => waitsToBeCounted(tray, day)).length,
    toClose: trays.filter(({ toClose }) => toClose).length,
    disagreeing: trays.filter(({ disagreements }) => disagreements > 0).length,
  };
}

/** Its next count is due by that day. */
export const waitsToBeCounted = ({ toClose, next }: TrayUnderWay, by: string): boolean => !toClose && next.on <= by;

const OPEN = `"trayId" IN (SELECT "id" FROM "Tray" WHERE "status" = 'open')`;

function readTrays(rows: Database, day: string): TrayUnderWay[] {
  const read = rows.transaction(() => ({
    trays: rows
      .prepare<[], TrayRow>(
        `SELECT t."id", t."number", t."lotId", l."number" AS "lotNumber", a."id" AS "accessionId",
           a."name" AS "accessionName", c."name" AS "cropName", t."place", t."temperatures", t."setOn",
           t."firstCountOn", t."finalCountOn", t."countEveryDays", t."version",
           (SELECT MAX(COALESCE(MAX("receivedAt"), t."createdAt"), t."createdAt") FROM "TrayCount"
             WHERE "trayId" = t."id") AS "changedAt"
         FROM "Tray" t JOIN "Lot" l ON l."id" = t."lotId" JOIN "Accession" a ON a."id" = l."accessionId"
         JOIN "Crop" c ON c."id" = a."cropId" WHERE t."status" = 'open'
         ORDER BY t."place" IS NULL, t."place", t."number"`,
      )
      .all(),
    dishes: rows
      .prepare<[], BenchDish & { trayId: string }>(
        `SELECT "id", "trayId", "position", "seeds" FROM "TrayDish" WHERE ${OPEN} ORDER BY "trayId", "position"`,
      )
      .all(),
    counts: rows
      .prepare<[], CountRow>(
        `SELECT "id", "trayId", "dishId", "on", "counted", "normal", "abnormal", "hard", "fresh", "dead", "replaces"
         FROM "TrayCount" WHERE ${OPEN}`,
      )
      .all(),
  }))();
  const dishes = byTray(read.dishes);
  const counts = byTray(read.counts);
  return read.trays.map((tray) => asItStands(tray, dishes.get(tray.id) ?? [], counts.get(tray.id) ?? [], day));
}

function asItStands(
  tray: TrayRow,
  dishes: readonly BenchDish[],
  counts: readonly CountRow[],
  day: string,
): TrayUnderWay {
  const states = dishStates(dishes, counts.map(countOf));
  const last = lastCountedOn(states);
  const ahead = countsAhead(tray, last, day);
  return {
    ...tray,
    dishes: dishes.length,
    seeds: dishes.reduce((sum, { seeds }) => sum + seeds, 0),
    remaining: states.reduce((sum, { remaining }) => sum + Math.max(0, remaining), 0),
    lastCountedOn: last,
    next: ahead[0] as NextCount,
    ahead,
    toClose: unready(states).length === 0,
    disagreements: states.reduce((sum, { disagreements }) => sum + disagreements.length, 0),
  };
}

const countOf = ({ id, dishId, on, counted, replaces, normal, abnormal, hard, fresh, dead }: CountRow): TrayCount => ({
  id,
  dishId,
  on,
  found: counted ? { normal, abnormal, hard, fresh, dead } : null,
  replaces: JSON.parse(replaces) as string[],
});

function byTray<Row extends { trayId: string }>(rows: readonly Row[]): Map<string, Row[]> {
  const grouped = new Map<string, Row[]>();
  for (const row of rows) {
    const group = grouped.get(row.trayId);
    if (group) group.push(row);
    else grouped.set(row.trayId, [row]);
  }
  return grouped;
}
