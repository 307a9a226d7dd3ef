import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { addDays, daysBetween } from '@/lib/domain/calendar/calendar-date';
import { type SeriesGroup, type SeriesSoFar, seriesSoFar } from '@/lib/domain/germination/plan/series';
import { parseSequentialPlan, type StoredPlan } from '@/lib/schemas/sequential-plan';
import { reader } from '../database/connections';

/** One group of a test in groups. */
export interface GroupOfSeries extends SeriesGroup {
  id: string;
  number: string;
  groupNumber: number;
  setOn: string;
  closedOn: string | null;
  place: string | null;
  /** seeds set */
  seeds: number;
  /** what closing wrote, or what it was corrected to; null until it is closed */
  result: { testNumber: string; seeds: number; normal: number; alive: number } | null;
}

/** A test in groups: its plan, its groups, and what the plan says of them. */
export interface TestSeries {
  seriesId: string;
  lot: { id: string; number: string; accessionName: string; cropName: string };
  plan: StoredPlan;
  groups: GroupOfSeries[];
  soFar: SeriesSoFar;
}

/**
 * A test in groups with all of its groups, in the order in which they were set.
 *
 * @param seriesId  `Tray.seriesId`
 * @returns null where there is no such series, or it is a fixed test
 * Checked in tests/server/queries/test-series.test.ts
 */
export async function findSeries(seriesId: string, database: Reading = reader()): Promise<TestSeries | null> {
  return (await findAllSeries([seriesId], database))[0] ?? null;
}

/**
 * Several tests in groups: two statements, however many.
 *
 * @param seriesIds  `Tray.seriesId` of each
 * @returns those that are tests in groups, in the order asked for
 */
export async function findAllSeries(seriesIds: readonly string[], database: Reading = reader()): Promise<TestSeries[]> {
  if (seriesIds.length === 0) return [];
  const trays = await database.tray.findMany({
    where: { seriesId: { in: [...seriesIds] } },
    orderBy: [{ groupNumber: 'asc' }, { id: 'asc' }],
    select: {
      id: true,
      number: true,
      seriesId: true,
      groupNumber: true,
      status: true,
      setOn: true,
      closedOn: true,
      place: true,
      sequentialPlan: true,
      dishes: { select: { seeds: true } },
      lot: {
        select: { id: true, number: true, accession: { select: { name: true, crop: { select: { name: true } } } } },
      },
    },
  });
  const results = await standingResults(database, seriesIds);
  return seriesIds.flatMap((seriesId) => {
    const ofSeries = trays.filter((tray) => tray.seriesId === seriesId);
    const [first] = ofSeries;
    const plan = parseSequentialPlan(first?.sequentialPlan ?? null);
    if (!first || !plan) return [];
    const groups = ofSeries.map(
      ({ id, number, groupNumber, status, setOn, closedOn, place, dishes }): GroupOfSeries => {
        const result = results.get(id);
        return {
          ...{ id, number, groupNumber, setOn, closedOn, place },
          status: status as GroupOfSeries['status'],
          seeds: dishes.reduce((sum, dish) => sum + dish.seeds, 0),
          // Reopened, a tray's earlier result no longer says how the group came out.
          result: status === 'closed' && result ? result : null,
        };
      },
    );
    const { accession, ...lot } = first.lot;
    return {
      seriesId,
      lot: { ...lot, accessionName: accession.name, cropName: accession.crop.name },
      plan,
      groups,
      soFar: seriesSoFar(plan, groups),
    };
  });
}

type Reading = Pick<Prisma.TransactionClient, 'tray' | '$queryRaw'>;

interface ResultRow {
  trayId: string;
  testNumber: string;
  seeds: bigint;
  normal: bigint;
  alive: bigint;
}

/** By tray: the test that closing wrote, or what that was corrected to since. */
async function standingResults(
  database: Reading,
  seriesIds: readonly string[],
): Promise<Map<string, NonNullable<GroupOfSeries['result']>>> {
  const rows = await database.$queryRaw<ResultRow[]>`
    WITH RECURSIVE version("id", "trayId") AS (
      SELECT t."id", t."trayId" FROM "GerminationTest" t JOIN "Tray" tray ON tray."id" = t."trayId"
        WHERE tray."seriesId" IN (${Prisma.join([...seriesIds])})
      UNION SELECT t."id", v."trayId" FROM "GerminationTest" t JOIN version v ON t."correctsId" = v."id")
    SELECT v."trayId", t."number" AS "testNumber", SUM(r."seeds") AS seeds, SUM(r."normal") AS normal,
      SUM(r."normal" + r."hard" + r."fresh") AS alive
    FROM (SELECT DISTINCT "id", "trayId" FROM version) v JOIN "GerminationTest" t ON t."id" = v."id"
    JOIN "Replicate" r ON r."testId" = t."id"
    WHERE NOT EXISTS (SELECT 1 FROM "GerminationTest" c WHERE c."correctsId" = t."id")
    GROUP BY t."id" ORDER BY t."id"`;
  return new Map(
    rows.map(({ trayId, testNumber, seeds, normal, alive }) => [
      trayId,
      { testNumber, seeds: Number(seeds), normal: Number(normal), alive: Number(alive) },
    ]),
  );
}

/** The days of a tray moved to another day of setting. */
export function sameDaysFrom(
  tray: { setOn: string; firstCountOn: string; finalCountOn: string },
  setOn: string,
): { firstCountOn: string; finalCountOn: string } {
  return {
    firstCountOn: addDays(setOn, daysBetween(tray.setOn, tray.firstCountOn)),
    finalCountOn: addDays(setOn, daysBetween(tray.setOn, tray.finalCountOn)),
  };
}
