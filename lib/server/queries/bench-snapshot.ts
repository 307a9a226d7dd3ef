import 'server-only';
import type { BenchDish } from '@/lib/domain/germination/bench/dish-state';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import type { BenchCount, BenchNote, BenchSnapshot, BenchTray } from '@/lib/schemas/bench-wire';
import type { Person } from '../auth/roles';
import { connections } from '../database/connections';
import { environment } from '../env';
import { today } from '../today';

type TrayRow = Omit<BenchTray, 'light' | 'hardSeedOccurs' | 'dishes' | 'counts' | 'notes'> & {
  light: number;
  hardSeedOccurs: number;
};

interface CountRow extends ClassCounts {
  id: string;
  trayId: string;
  dishId: string;
  on: string;
  counted: number;
  places: string | null;
  replaces: string;
  deviceId: string;
  madeAt: string;
  byName: string;
}

const OPEN = `"trayId" IN (SELECT "id" FROM "Tray" WHERE "status" = 'open')`;

/**
 * Every open tray with its dishes, counts and notes, for phones at the bench: four statements of one moment, however many
 * trays. Prisma would take several times as long over the counts.
 *
 * Checked in tests/server/queries/bench-snapshot.test.ts
 */
export function getBenchSnapshot(person: Person): BenchSnapshot {
  const { rows } = connections();
  const read = rows.transaction(() => ({
    trays: rows
      .prepare<[], TrayRow>(
        `SELECT t."id", t."number", l."number" AS "lotNumber", a."name" AS "accessionName", c."name" AS "cropName",
           t."place", t."setOn", t."firstCountOn", t."finalCountOn", t."countEveryDays", t."temperatures", t."substrate",
           t."light", EXISTS (SELECT 1 FROM "GerminationMethod" m WHERE m."cropId" = c."id" AND m."hardSeedOccurs")
             AS "hardSeedOccurs", l."treatment"
         FROM "Tray" t JOIN "Lot" l ON l."id" = t."lotId" JOIN "Accession" a ON a."id" = l."accessionId"
         JOIN "Crop" c ON c."id" = a."cropId" WHERE t."status" = 'open' ORDER BY t."number"`,
      )
      .all(),
    dishes: rows
      .prepare<[], BenchDish & { trayId: string }>(
        `SELECT "id", "trayId", "position", "seeds" FROM "TrayDish" WHERE ${OPEN} ORDER BY "trayId", "position"`,
      )
      .all(),
    counts: rows
      .prepare<[], CountRow>(
        `SELECT "id", "trayId", "dishId", "on", "counted", "normal", "abnormal", "hard", "fresh", "dead", "places",
           "replaces", "deviceId", "madeAt", COALESCE("countedBy", "byName") AS "byName"
         FROM "TrayCount" WHERE ${OPEN} ORDER BY "id"`,
      )
      .all(),
    notes: rows
      .prepare<[], BenchNote & { trayId: string }>(
        `SELECT "id", "trayId", "dish", "on", "kind", "text", "byName" FROM "TrayNote" WHERE ${OPEN} ORDER BY "id"`,
      )
      .all(),
  }))();
  const dishes = byTray(read.dishes, ({ trayId: _of, ...dish }): BenchDish => dish);
  const counts = byTray(read.counts, countOf);
  const notes = byTray(read.notes, ({ trayId: _of, ...note }): BenchNote => note);
  return {
    today: today(),
    todayIsFixed: environment().HILUM_TODAY !== undefined,
    person: { id: person.id, name: person.name },
    trays: read.trays.map((tray) => ({
      ...tray,
      light: tray.light === 1,
      hardSeedOccurs: tray.hardSeedOccurs === 1,
      dishes: dishes.get(tray.id) ?? [],
      counts: counts.get(tray.id) ?? [],
      notes: notes.get(tray.id) ?? [],
    })),
  };
}

function countOf({
  id,
  dishId,
  on,
  counted,
  places,
  replaces,
  deviceId,
  madeAt,
  byName,
  ...row
}: CountRow): BenchCount {
  const { normal, abnormal, hard, fresh, dead } = row;
  return {
    id,
    dishId,
    on,
    found: counted === 1 ? { normal, abnormal, hard, fresh, dead } : null,
    replaces: JSON.parse(replaces) as string[],
    places: places === null ? null : (JSON.parse(places) as BenchCount['places']),
    deviceId,
    madeAt,
    byName,
  };
}

function byTray<Row extends { trayId: string }, Item>(rows: Row[], itemOf: (row: Row) => Item): Map<string, Item[]> {
  const items = new Map<string, Item[]>();
  for (const row of rows) {
    const ofTray = items.get(row.trayId);
    if (ofTray) ofTray.push(itemOf(row));
    else items.set(row.trayId, [itemOf(row)]);
  }
  return items;
}
