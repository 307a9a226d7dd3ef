import 'server-only';
import { joinIntoHundreds, type NormalCount, rangeInPoints } from '@/lib/domain/germination/normal-count';
import { type ReplicateTolerance, replicateTolerance } from '@/lib/domain/germination/replicate-tolerance';
import { compareTwoResults, type TwoResults } from '@/lib/domain/germination/two-results';
import { binomialInterval, type Interval } from '@/lib/domain/statistics/binomial-interval';
import type { Period } from '@/lib/schemas/germination-report-query';
import { connections } from '../database/connections';

/** One germination test in the report over a period. */
export interface ReportTest {
  id: string;
  number: string;
  cropName: string;
  accessionName: string;
  lotId: string;
  lotNumber: string;
  setOn: string;
  finishedOn: string;
  method: string | null;
  replicates: number;
  seeds: number;
  normal: number;
  /** of the share of normal seedlings, 95 %, all replicates together */
  interval: Interval;
  /** highest less lowest replicate and what is tolerated, percentage points; null where nobody can tell */
  agreement: { range: number; tolerated: number; within: boolean } | null;
  /** the lot's test before it */
  before: { number: string; finishedOn: string; seeds: number; normal: number } | null;
  /** seeds that the ledger took out for it, and when; null where it took none */
  takenOut: { seeds: number; on: string } | null;
  /** the lot's next test after it */
  testedSince: string | null;
  /** what is judged of the lot today */
  judged: {
    action: 'regrow' | 'test-first' | 'leave';
    testDueOn: string | null;
    viabilityMedian: number | null;
    threshold: number | null;
    chanceBelow: number | null;
  } | null;
}

/** Whether a test and the lot's test before it can both be right; null for a first test. Only worked out for what is shown. */
export function againstBefore({
  before,
  normal,
  seeds,
}: Pick<ReportTest, 'before' | 'normal' | 'seeds'>): TwoResults | null {
  if (!before) return null;
  return compareTwoResults({ germinated: normal, seeds }, { germinated: before.normal, seeds: before.seeds });
}

/** Tests read in one go. */
export const REPORT_PIECE = 1_000;

/**
 * The tests whose last count fell into the period, by crop, variety, lot and day; those that a later entry corrects are
 * left out, since that stands for them.
 *
 * Checked in tests/server/queries/germination-report.test.ts
 */
export const findReportTestIds = ({ from, to }: Period): string[] =>
  connections()
    .rows.prepare<[string, string], string>(
      `SELECT t."id" FROM "GerminationTest" t JOIN "Lot" l ON l."id" = t."lotId"
       JOIN "Accession" a ON a."id" = l."accessionId" JOIN "Crop" c ON c."id" = a."cropId"
       WHERE t."finishedOn" BETWEEN ? AND ? AND ${STANDS('t')}
       ORDER BY c."name", a."name", l."number", t."finishedOn", t."id"`,
    )
    .pluck()
    .all(from, to) as string[];

/** No later entry corrects it. */
export const STANDS = (test: string) =>
  `NOT EXISTS (SELECT 1 FROM "GerminationTest" later WHERE later."correctsId" = ${test}."id")`;

/**
 * Rows `line(testId, movementId)`: the ledger's lines of these tests. The first version of a test names its line, or the
 * tray does.
 *
 * @param chosen  SQL that gives the ids of the tests
 */
export const linesOfTests = (chosen: string) => `
  version("testId", "id") AS (
    SELECT "id", "id" FROM "GerminationTest" WHERE "id" IN (${chosen})
    UNION ALL
    SELECT v."testId", t."correctsId" FROM version v JOIN "GerminationTest" t ON t."id" = v."id"
    WHERE t."correctsId" IS NOT NULL),
  line("testId", "movementId") AS (
    SELECT DISTINCT v."testId", m."id" FROM version v JOIN "GerminationTest" t ON t."id" = v."id"
    LEFT JOIN "Tray" tray ON tray."id" = t."trayId"
    JOIN "Movement" m ON m."id" = COALESCE(t."withdrawalId", tray."withdrawalId")
    WHERE NOT EXISTS (SELECT 1 FROM "Movement" back WHERE back."correctsId" = m."id"))`;

type TestRow = Omit<
  ReportTest,
  'replicates' | 'seeds' | 'normal' | 'interval' | 'agreement' | 'before' | 'takenOut' | 'judged'
> & {
  takenSeeds: number | null;
  takenOn: string | null;
  beforeId: string | null;
  beforeNumber: string | null;
  beforeFinishedOn: string | null;
} & { [Key in keyof NonNullable<ReportTest['judged']>]: NonNullable<ReportTest['judged']>[Key] | null };

/**
 * These tests, in this order: two statements however many they are.
 *
 * @param ids        at most REPORT_PIECE
 * @param tolerances what replicates may differ by, kept from piece to piece: it is costly to work out
 */
export function readReportTests(ids: readonly string[], tolerances: ToleranceMemory): ReportTest[] {
  const { rows } = connections();
  const asked = { ids: JSON.stringify(ids) };
  const tests = rows
    .prepare<object, TestRow>(
      `WITH RECURSIVE
         chosen("id", "place") AS (SELECT "value", "key" FROM json_each(@ids)),
         ${linesOfTests('SELECT "id" FROM chosen')},
         taken AS (
           SELECT line."testId", SUM(-m."seeds") AS "seeds", MIN(m."on") AS "on"
           FROM line JOIN "Movement" m ON m."id" = line."movementId" GROUP BY 1),
         ofLot AS (
           SELECT t."id", LAG(t."id") OVER inTime AS "beforeId", LEAD(t."number") OVER inTime AS "testedSince"
           FROM "GerminationTest" t
           WHERE t."lotId" IN (SELECT "lotId" FROM "GerminationTest" WHERE "id" IN (SELECT "id" FROM chosen))
             AND ${STANDS('t')}
           WINDOW inTime AS (PARTITION BY t."lotId" ORDER BY t."finishedOn", t."id"))
       SELECT t."id", t."number", c."name" AS "cropName", a."name" AS "accessionName", l."id" AS "lotId",
         l."number" AS "lotNumber", t."setOn", t."finishedOn", t."method", ofLot."testedSince",
         taken."seeds" AS "takenSeeds", taken."on" AS "takenOn",
         ofLot."beforeId", before."number" AS "beforeNumber", before."finishedOn" AS "beforeFinishedOn",
         j."action", j."testDueOn", j."viabilityMedian", j."threshold", j."chanceBelow"
       FROM chosen JOIN "GerminationTest" t ON t."id" = chosen."id" JOIN "Lot" l ON l."id" = t."lotId"
       JOIN "Accession" a ON a."id" = l."accessionId" JOIN "Crop" c ON c."id" = a."cropId"
       LEFT JOIN "LotJudgement" j ON j."lotId" = l."id" LEFT JOIN taken ON taken."testId" = t."id"
       LEFT JOIN ofLot ON ofLot."id" = t."id" LEFT JOIN "GerminationTest" before ON before."id" = ofLot."beforeId"
       ORDER BY chosen."place"`,
    )
    .all(asked);
  const dishes = dishesOf(tests.flatMap(({ id, beforeId }) => (beforeId ? [id, beforeId] : [id])));
  return tests.map((test) => asReportTest(test, dishes, tolerances));
}

function dishesOf(ids: readonly string[]): Map<string, NormalCount[]> {
  const found = new Map<string, NormalCount[]>();
  const dishes = connections()
    .rows.prepare<[string], NormalCount & { testId: string }>(
      `SELECT "testId", "seeds", "normal" FROM "Replicate" WHERE "testId" IN (SELECT "value" FROM json_each(?))
       ORDER BY "testId", "position"`,
    )
    .iterate(JSON.stringify(ids));
  for (const { testId, seeds, normal } of dishes) {
    const dish = { seeds, normal };
    const before = found.get(testId);
    if (before) before.push(dish);
    else found.set(testId, [dish]);
  }
  return found;
}

function asReportTest(row: TestRow, dishes: Map<string, NormalCount[]>, tolerances: ToleranceMemory): ReportTest {
  const { takenSeeds, takenOn, beforeId, beforeNumber, beforeFinishedOn, ...rest } = row;
  const { action, testDueOn, viabilityMedian, threshold, chanceBelow, ...test } = rest;
  const replicates = dishes.get(row.id) ?? [];
  const now = totals(replicates);
  const earlier = totals((beforeId && dishes.get(beforeId)) || []);
  return {
    ...test,
    ...now,
    replicates: replicates.length,
    interval: binomialInterval({ successes: now.normal, trials: now.seeds, level: 0.95 }),
    agreement: agreementOf(replicates, tolerances),
    before:
      beforeNumber && beforeFinishedOn && earlier.seeds > 0
        ? { number: beforeNumber, finishedOn: beforeFinishedOn, ...earlier }
        : null,
    takenOut: takenSeeds !== null && takenOn !== null ? { seeds: takenSeeds, on: takenOn } : null,
    judged: action ? { action, testDueOn, viabilityMedian, threshold, chanceBelow } : null,
  };
}

const totals = (dishes: readonly NormalCount[]) => ({
  seeds: dishes.reduce((sum, dish) => sum + dish.seeds, 0),
  normal: dishes.reduce((sum, dish) => sum + dish.normal, 0),
});

/** Tolerated ranges by what they depend on: the seeds of each dish and the normal seedlings in all. */
export type ToleranceMemory = Map<string, ReplicateTolerance>;

function agreementOf(dishes: readonly NormalCount[], tolerances: ToleranceMemory): ReportTest['agreement'] {
  const compared = joinIntoHundreds(dishes);
  if (compared.length < 2) return null;
  const key = `${compared.map(({ seeds }) => seeds).join(' ')} ${totals(compared).normal}`;
  let tolerance = tolerances.get(key);
  if (!tolerance) {
    tolerance = replicateTolerance(compared);
    tolerances.set(key, tolerance);
  }
  if (!tolerance.ok) return null;
  const range = rangeInPoints(compared);
  return { range, tolerated: tolerance.toleratedRange, within: range <= tolerance.toleratedRange };
}
