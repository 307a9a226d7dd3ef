import type { Database } from 'better-sqlite3';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';

export interface TrayToInsert {
  /** lot that exists already */
  lotNumber: string;
  number?: string;
  setOn?: string;
  firstCountOn?: string;
  finalCountOn?: string;
  countEveryDays?: number | null;
  temperatures?: string | null;
  place?: string | null;
  notes?: string | null;
  /** seeds of each dish */
  dishes?: number[];
  /** what was found, by day and position of the dish */
  counts?: { on: string; dish: number; found: Partial<ClassCounts> }[];
  /** takes the seed out of the lot's packet in the ledger */
  takesSeed?: boolean;
}

export interface InsertedTray {
  id: string;
  number: string;
  lotId: string;
  packetId: string | null;
  dishes: { id: string; position: number; seeds: number }[];
}

/**
 * A tray that stands in the incubator: two dishes of 50 seeds, set 2026-11-18, first counted after five days, unless told
 * otherwise. Written straight into the file, so that a browser test can use it while the server runs. The lot is not
 * judged anew: nothing that a judgement reads is changed but the ledger, if seed is taken.
 */
export function insertTray(
  database: Database,
  {
    lotNumber,
    number = nextTestNumber(database),
    setOn = '2026-11-18',
    firstCountOn = '2026-11-23',
    finalCountOn = '2026-12-02',
    countEveryDays = null,
    temperatures = '20',
    place = null,
    notes = null,
    dishes = [50, 50],
    counts = [],
    takesSeed = true,
  }: TrayToInsert,
): InsertedTray {
  const lot = database.prepare('SELECT "id" FROM "Lot" WHERE "number" = ?').get(lotNumber) as { id: string };
  const packet = database.prepare('SELECT "id" FROM "Packet" WHERE "lotId" = ? ORDER BY "number"').get(lot.id) as
    | { id: string }
    | undefined;
  const id = `tray-${number}`;
  const withdrawalId = takesSeed && packet ? `${id}-out` : null;
  const rows = dishes.map((seeds, index) => ({ id: `${id}-dish-${index + 1}`, position: index + 1, seeds }));
  database.transaction(() => {
    if (withdrawalId && packet) {
      const seeds = dishes.reduce((sum, each) => sum + each, 0);
      insert(database, 'Movement', {
        id: withdrawalId,
        packetId: packet.id,
        on: setOn,
        reason: 'test',
        seeds: -seeds,
        seedsSd: 0,
        note: `Germination test ${number}`,
        byId: 'volunteer',
        recordedAt: `${setOn}T08:00:00.000+00:00`,
      });
    }
    insert(database, 'Tray', {
      id,
      number,
      lotId: lot.id,
      packetId: packet?.id ?? null,
      withdrawalId,
      setOn,
      temperatures,
      firstCountOn,
      finalCountOn,
      countEveryDays,
      place,
      notes,
      seriesId: id,
      byId: 'volunteer',
      createdAt: `${setOn}T08:00:00.000+00:00`,
    });
    for (const dish of rows) insert(database, 'TrayDish', { ...dish, trayId: id });
    for (const [index, { on, dish, found }] of counts.entries()) {
      insert(database, 'TrayCount', {
        id: countId(number, index),
        trayId: id,
        dishId: `${id}-dish-${dish}`,
        on,
        ...NOTHING_FOUND,
        ...found,
        deviceId: 'device-of-the-test',
        madeAt: `${on}T09:00:00.000+00:00`,
        receivedAt: `${on}T09:00:00.000+00:00`,
        byId: 'volunteer',
        byName: 'Moss',
      });
    }
  })();
  return { id, number, lotId: lot.id, packetId: packet?.id ?? null, dishes: rows };
}

function nextTestNumber(database: Database): string {
  const { last } = database
    .prepare(
      `SELECT MAX("number") AS "last" FROM (SELECT "number" FROM "GerminationTest" UNION ALL SELECT "number" FROM "Tray") WHERE "number" LIKE 'T-%'`,
    )
    .get() as { last: string | null };
  return `T-${String(Number(last?.slice(2) ?? 0) + 1).padStart(4, '0')}`;
}

/** A UUIDv7 from long before today, so that counts made in a test come after it. */
function countId(number: string, index: number): string {
  const tail = `${number.replace(/\D/g, '').padStart(6, '0')}${String(index).padStart(6, '0')}`;
  return `019a0000-0000-7000-8000-${tail.slice(-12)}`;
}

function insert(database: Database, table: string, row: Record<string, string | number | null>): void {
  const columns = Object.keys(row);
  database
    .prepare(
      `INSERT INTO "${table}" (${columns.map((column) => `"${column}"`).join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
    )
    .run(...Object.values(row));
}
