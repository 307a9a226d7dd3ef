import 'server-only';
import { setImmediate } from 'node:timers/promises';
import type { ViabilityKind } from '@/lib/domain/germination/dormancy/viability-kinds';
import type { GerminationReportQuery, Period } from '@/lib/schemas/germination-report-query';
import { connections } from '../database/connections';
import { PAGE_SIZE, pageOf } from './list-page';
import { germinationReportSeeds, type ReportSeeds } from './report-seeds';
import {
  findReportTestIds,
  REPORT_PIECE,
  type ReportTest,
  readReportTests,
  type ToleranceMemory,
} from './report-tests';

/** Sums over tests: of a crop, or of the whole period. */
export interface ReportSums {
  tests: number;
  lots: number;
  seeds: number;
  normal: number;
  /** tests whose replicates could be compared, and those of them that lie outside what is tolerated */
  comparable: number;
  outside: number;
  /** lots of these tests that are more likely below their line than above it today */
  lotsBelow: number;
}

export interface GerminationReport {
  /** the tests of this page; all of them when the whole was asked for */
  tests: ReportTest[];
  page: number;
  pages: number;
  sums: ReportSums;
  byCrop: (ReportSums & { cropName: string })[];
  /** the most used first; null is a method that nobody noted */
  byMethod: { method: string | null; tests: number }[];
  seeds: ReportSeeds;
  traysGivenUp: number;
  viabilityTests: { kind: ViabilityKind; tests: number; seeds: number }[];
}

/**
 * Everything that the report over a period says. Statements are a few for each thousand tests; between thousands other
 * requests get their turn.
 *
 * Checked in tests/server/queries/germination-report.test.ts
 */
export async function getGerminationReport({
  page,
  whole,
  ...period
}: GerminationReportQuery): Promise<GerminationReport> {
  const ids = findReportTestIds(period);
  const shown = pageOf(page, ids.length);
  const onPage = whole ? new Set(ids) : new Set(ids.slice(shown.offset, shown.offset + PAGE_SIZE));
  const tally = new Tally();
  const tests: ReportTest[] = [];
  for await (const piece of reportTests(ids)) {
    for (const test of piece) {
      tally.add(test);
      if (onPage.has(test.id)) tests.push(test);
    }
  }
  return {
    tests,
    page: whole ? 1 : shown.page,
    pages: whole ? 1 : shown.pages,
    ...tally.sums(),
    seeds: germinationReportSeeds(period),
    traysGivenUp: traysGivenUp(period),
    viabilityTests: viabilityTestsIn(period),
  };
}

/** These tests, a thousand at a time. */
export async function* reportTests(ids: readonly string[]): AsyncGenerator<ReportTest[]> {
  const tolerances: ToleranceMemory = new Map();
  for (let from = 0; from < ids.length; from += REPORT_PIECE) {
    yield readReportTests(ids.slice(from, from + REPORT_PIECE), tolerances);
    await setImmediate();
  }
}

interface Running extends Omit<ReportSums, 'lots' | 'lotsBelow'> {
  lots: Set<string>;
  lotsBelow: Set<string>;
}

/** Adds tests up, for the whole and by crop and method. */
class Tally {
  private readonly all = nothing();
  private readonly crops = new Map<string, Running>();
  private readonly methods = new Map<string | null, number>();

  add(test: ReportTest): void {
    const crop = this.crops.get(test.cropName) ?? nothing();
    this.crops.set(test.cropName, crop);
    for (const sums of [this.all, crop]) addTo(sums, test);
    this.methods.set(test.method, (this.methods.get(test.method) ?? 0) + 1);
  }

  sums(): Pick<GerminationReport, 'sums' | 'byCrop' | 'byMethod'> {
    return {
      sums: finished(this.all),
      byCrop: [...this.crops].map(([cropName, sums]) => ({ cropName, ...finished(sums) })),
      byMethod: [...this.methods]
        .map(([method, tests]) => ({ method, tests }))
        .sort((a, b) => b.tests - a.tests || (a.method ?? '').localeCompare(b.method ?? '')),
    };
  }
}

function addTo(sums: Running, test: ReportTest): void {
  sums.tests += 1;
  sums.seeds += test.seeds;
  sums.normal += test.normal;
  sums.lots.add(test.lotId);
  if (test.agreement) sums.comparable += 1;
  if (test.agreement?.within === false) sums.outside += 1;
  if ((test.judged?.chanceBelow ?? 0) > LIKELIER_THAN_NOT) sums.lotsBelow.add(test.lotId);
}

const LIKELIER_THAN_NOT = 0.5;

const nothing = (): Running => ({
  ...{ tests: 0, seeds: 0, normal: 0, comparable: 0, outside: 0 },
  ...{ lots: new Set<string>(), lotsBelow: new Set<string>() },
});

const finished = ({ lots, lotsBelow, ...sums }: Running): ReportSums => ({
  ...sums,
  lots: lots.size,
  lotsBelow: lotsBelow.size,
});

const traysGivenUp = (period: Period): number =>
  connections()
    .rows.prepare<object, number>(
      `SELECT COUNT(*) FROM "Tray" WHERE "status" = 'given-up' AND COALESCE("closedOn", date("closedAt")) BETWEEN @from AND @to`,
    )
    .pluck()
    .get(period) as number;

const viabilityTestsIn = (period: Period): GerminationReport['viabilityTests'] =>
  connections()
    .rows.prepare<object, GerminationReport['viabilityTests'][number]>(
      `SELECT v."kind", COUNT(*) AS "tests", SUM(
         COALESCE(v."stainedNormally", 0) + COALESCE(v."stainedAbnormally", 0) + COALESCE(v."unstained", 0) +
         COALESCE(v."firm", 0) + COALESCE(v."empty", 0) + COALESCE(v."insectDamaged", 0) + COALESCE(v."dead", 0)) AS "seeds"
       FROM "ViabilityTest" v WHERE v."testedOn" BETWEEN @from AND @to
         AND NOT EXISTS (SELECT 1 FROM "ViabilityTest" later WHERE later."correctsId" = v."id")
       GROUP BY 1 ORDER BY 1 DESC`,
    )
    .all(period);
