import 'server-only';
import type { Period } from '@/lib/schemas/germination-report-query';
import { connections } from '../database/connections';
import { linesOfTests, STANDS } from './report-tests';

/** What seed that the ledger took out for tests went into. */
export const SEED_USES = [
  'these tests',
  'other germination tests',
  'trays given up',
  'viability tests',
  'moisture tests',
  'no test named',
] as const;
export type SeedUse = (typeof SEED_USES)[number];

/** Where the seed of a period's tests came from, and what the ledger took out for tests in that period. */
export interface ReportSeeds {
  /** seeds set in the tests of the report */
  set: number;
  /** of the tests of the report: seeds that the ledger took out on a day of the period, and on another day */
  takenInPeriod: number;
  takenOutside: number;
  /** tests of the report for which the ledger took out nothing, and the seeds set in them */
  notInLedger: { tests: number; seeds: number };
  /** seeds that the ledger took out for tests of the report beyond what was set; negative for less */
  beyondSet: number;
  /** the ledger's lines for tests on days of the period, by what they went into; lines taken back are left out */
  ledger: { use: SeedUse; lines: number; seeds: number }[];
  /** seeds of all those lines */
  ledgerTotal: number;
}

/**
 * Seeds used up, told twice: by the tests and by the ledger, with what explains the difference. Always
 * set = takenInPeriod + takenOutside + notInLedger.seeds - beyondSet, and the ledger's 'these tests' = takenInPeriod.
 *
 * Checked in tests/server/queries/germination-report.test.ts
 */
export function germinationReportSeeds({ from, to }: Period): ReportSeeds {
  const { rows } = connections();
  const period = { from, to };
  const ofTests = rows
    .prepare<object, { set: number; inPeriod: number; outside: number; missing: number; missingSeeds: number }>(
      `WITH RECURSIVE ${CHOSEN}, ${linesOfTests('SELECT "id" FROM chosen')},
         perTest AS (
           SELECT chosen."id", (SELECT SUM("seeds") FROM "Replicate" WHERE "testId" = chosen."id") AS "set",
             COUNT(m."id") AS "lines",
             COALESCE(SUM(CASE WHEN m."on" BETWEEN @from AND @to THEN -m."seeds" END), 0) AS "inPeriod",
             COALESCE(SUM(CASE WHEN m."on" NOT BETWEEN @from AND @to THEN -m."seeds" END), 0) AS "outside"
           FROM chosen LEFT JOIN line ON line."testId" = chosen."id" LEFT JOIN "Movement" m ON m."id" = line."movementId"
           GROUP BY chosen."id")
       SELECT COALESCE(SUM("set"), 0) AS "set", COALESCE(SUM("inPeriod"), 0) AS "inPeriod",
         COALESCE(SUM("outside"), 0) AS "outside", COUNT(CASE WHEN "lines" = 0 THEN 1 END) AS "missing",
         COALESCE(SUM(CASE WHEN "lines" = 0 THEN "set" END), 0) AS "missingSeeds" FROM perTest`,
    )
    .get(period);
  if (!ofTests) throw new Error('a sum over tests gave no row');
  const found = rows
    .prepare<object, { use: SeedUse; lines: number; seeds: number }>(
      `WITH RECURSIVE ${CHOSEN}, ${linesOfTests('SELECT "id" FROM chosen')}
       SELECT CASE
           WHEN m."id" IN (SELECT "movementId" FROM line) THEN 'these tests'
           WHEN EXISTS (SELECT 1 FROM "ViabilityTest" v WHERE v."withdrawalId" = m."id") THEN 'viability tests'
           WHEN EXISTS (SELECT 1 FROM "MoistureTest" w WHERE w."withdrawalId" = m."id") THEN 'moisture tests'
           WHEN EXISTS (SELECT 1 FROM "Tray" t WHERE t."withdrawalId" = m."id" AND t."status" = 'given-up')
             THEN 'trays given up'
           WHEN EXISTS (SELECT 1 FROM "Tray" t WHERE t."withdrawalId" = m."id")
             OR EXISTS (SELECT 1 FROM "GerminationTest" t WHERE t."withdrawalId" = m."id")
             THEN 'other germination tests'
           ELSE 'no test named' END AS "use", COUNT(*) AS "lines", SUM(-m."seeds") AS "seeds"
       FROM "Movement" m WHERE m."reason" = 'test' AND m."on" BETWEEN @from AND @to
         AND NOT EXISTS (SELECT 1 FROM "Movement" back WHERE back."correctsId" = m."id") GROUP BY 1`,
    )
    .all(period);
  return {
    set: ofTests.set,
    takenInPeriod: ofTests.inPeriod,
    takenOutside: ofTests.outside,
    notInLedger: { tests: ofTests.missing, seeds: ofTests.missingSeeds },
    beyondSet: ofTests.inPeriod + ofTests.outside + ofTests.missingSeeds - ofTests.set,
    ledger: SEED_USES.flatMap((use) => found.filter((line) => line.use === use)),
    ledgerTotal: found.reduce((sum, { seeds }) => sum + seeds, 0),
  };
}

const CHOSEN = `chosen("id") AS (
  SELECT t."id" FROM "GerminationTest" t WHERE t."finishedOn" BETWEEN @from AND @to AND ${STANDS('t')})`;
