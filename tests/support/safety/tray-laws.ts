import type Database from 'better-sqlite3';
import { dishStates } from '@/lib/domain/germination/bench/dish-state';
import type { TrayCount } from '@/lib/domain/germination/bench/tray-count';

interface Dish {
  id: string;
  trayId: string;
  position: number;
  seeds: number;
}
interface Classes {
  normal: number;
  abnormal: number;
  hard: number;
  fresh: number;
  dead: number;
}
type CountRow = Classes & { id: string; dishId: string; on: string; counted: number; replaces: string };

/**
 * A closed tray has one test that stands, and it says what the counts known at closing add up to: late ones are not in it.
 * Reads a bank in which nobody corrected a tray's test by hand.
 */
export function trayComplaints(database: Database.Database): string[] {
  const all = <Row>(sql: string) => database.prepare<[], Row>(sql).all();
  const dishes = all<Dish>(`SELECT "id", "trayId", "position", "seeds" FROM "TrayDish" ORDER BY "trayId", "position"`);
  const counts = all<CountRow>(`SELECT * FROM "TrayCount" ORDER BY "id"`);
  const replicates = all<Classes & { number: string; seeds: number }>(
    `SELECT t."number", r.* FROM "Replicate" r JOIN "GerminationTest" t ON t."id" = r."testId" ORDER BY r."position"`,
  );
  const closings = all<{ id: string; number: string; standing: number; after: string }>(
    `SELECT t."id", t."number",
       (SELECT COUNT(*) FROM "GerminationTest" g WHERE g."trayId" = t."id"
         AND NOT EXISTS (SELECT 1 FROM "GerminationTest" c WHERE c."correctsId" = g."id")) AS "standing",
       (SELECT a."after" FROM "AuditEntry" a WHERE a."command" = 'close-tray' AND a."entity" = 'tray'
         AND a."entityId" = t."id" ORDER BY a."id" DESC LIMIT 1) AS "after"
     FROM "Tray" t WHERE t."status" = 'closed'`,
  );
  return closings.flatMap(({ id, number, standing, after }) => {
    if (standing !== 1) return [`closed tray ${number} has ${standing} tests that stand`];
    const closed = JSON.parse(after) as { test: string; counts: string[] };
    const known = new Set(closed.counts);
    const states = dishStates(
      dishes.filter(({ trayId }) => trayId === id),
      counts.filter((count) => known.has(count.id)).map(asTrayCount),
    );
    const expected = states.map(({ dish, totals }) => [dish.seeds, ...inOrder(totals)].join(' '));
    const said = replicates
      .filter((replicate) => replicate.number === closed.test)
      .map((replicate) => [replicate.seeds, ...inOrder(replicate)].join(' '));
    return JSON.stringify(expected) === JSON.stringify(said)
      ? []
      : [`test ${closed.test} of tray ${number} says ${said.join('; ')}, its counts ${expected.join('; ')}`];
  });
}

const inOrder = ({ normal, abnormal, hard, fresh, dead }: Classes) => [normal, abnormal, hard, fresh, dead];

const asTrayCount = ({ id, dishId, on, counted, replaces, ...found }: CountRow): TrayCount => ({
  ...{ id, dishId, on, replaces: JSON.parse(replaces) as string[] },
  found: counted
    ? { normal: found.normal, abnormal: found.abnormal, hard: found.hard, fresh: found.fresh, dead: found.dead }
    : null,
});
