import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { addDays } from '../../domain/calendar/calendar-date';
import { reader } from '../database/connections';
import { matching, where } from './list-page';
import { COMING_DAYS } from './lots-to-plan';
import { NOT_UNDER_TEST } from './under-test';

/** One line of the list of recorded tests. */
export interface GerminationTestRow {
  number: string;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  finishedOn: string;
  replicateCount: number;
  seeds: number;
  normal: number;
  /** normal, hard and fresh */
  alive: number;
  /** number of the test that corrects this one */
  correctedByNumber: string | null;
}

export interface Page<Row> {
  rows: Row[];
  total: number;
  /** from 1; the last page when a later one was asked for */
  page: number;
  pages: number;
}

export const TESTS_PER_PAGE = 30;
export const DUE_PER_PAGE = 10;

/**
 * Recorded tests, newest first.
 *
 * @param filter.cropId  only this crop
 * @param filter.text    found in the test's number; or each of its words among the lot's number and names
 * @param filter.page    from 1
 * Checked in tests/server/queries/germination-tests.test.ts
 */
export async function findGerminationTests(filter: {
  cropId?: string;
  text?: string;
  page?: number;
}): Promise<Page<GerminationTestRow>> {
  const narrowed = where(conditions(filter));
  const [counted] = await reader().$queryRaw<{ total: bigint }[]>`
    SELECT COUNT(*) AS total FROM "GerminationTest" ${narrowed}`;
  const total = Number(counted?.total ?? 0);
  const { page, pages, skip } = pageOf(filter.page, total, TESTS_PER_PAGE);
  const ids = await reader().$queryRaw<{ id: string }[]>`
    SELECT "id" FROM "GerminationTest" ${narrowed}
    ORDER BY "finishedOn" DESC, "id" DESC LIMIT ${TESTS_PER_PAGE} OFFSET ${skip}`;
  return { rows: await readRows(ids.map((row) => row.id)), total, page, pages };
}

/**
 * A lot's judgement holds its names and its crop in one row with an index, so both filters find lots there: joining
 * every test with its lot, accession and crop would take seconds in a large bank.
 */
function conditions({ cropId, text }: { cropId?: string; text?: string }): Prisma.Sql[] {
  const all: Prisma.Sql[] = [];
  if (cropId) all.push(Prisma.sql`"lotId" IN (SELECT "lotId" FROM "LotJudgement" WHERE "cropId" = ${cropId})`);
  const wanted = text?.trim();
  if (wanted) {
    const words = Prisma.join(matching('LotJudgement', wanted), ' AND ');
    const number = `%${wanted.replace(/[\\%_]/g, '\\$&')}%`;
    // Two searches joined by UNION use an index each; with OR, every test would be looked at twice.
    all.push(Prisma.sql`"id" IN (
      SELECT "id" FROM "GerminationTest" WHERE "number" LIKE ${number} ESCAPE '\\'
      UNION
      SELECT "id" FROM "GerminationTest" WHERE "lotId" IN (SELECT "lotId" FROM "LotJudgement" WHERE ${words}))`);
  }
  return all;
}

/** Rows of these tests, in this order. */
async function readRows(ids: string[]): Promise<GerminationTestRow[]> {
  const tests = await reader().germinationTest.findMany({
    where: { id: { in: ids } },
    select: {
      id: true,
      number: true,
      finishedOn: true,
      correctedBy: { select: { number: true } },
      lot: {
        select: { number: true, accession: { select: { name: true, crop: { select: { name: true } } } } },
      },
      replicates: { select: { seeds: true, normal: true, hard: true, fresh: true } },
    },
  });
  const place = new Map(ids.map((id, index) => [id, index]));
  return tests
    .sort((a, b) => (place.get(a.id) ?? 0) - (place.get(b.id) ?? 0))
    .map(({ number, finishedOn, lot, replicates, correctedBy }) => ({
      number,
      finishedOn,
      lotNumber: lot.number,
      accessionName: lot.accession.name,
      cropName: lot.accession.crop.name,
      replicateCount: replicates.length,
      seeds: replicates.reduce((sum, dish) => sum + dish.seeds, 0),
      normal: replicates.reduce((sum, dish) => sum + dish.normal, 0),
      alive: replicates.reduce((sum, dish) => sum + dish.normal + dish.hard + dish.fresh, 0),
      correctedByNumber: correctedBy?.number ?? null,
    }));
}

/** A lot that is to be tested, and why. */
export interface TestDueRow {
  lotNumber: string;
  accessionName: string;
  cropName: string;
  harvestedOn: string;
  testDueOn: string;
  reason: string | null;
  seedsLeft: number;
  lastTestedOn: string | null;
}

/**
 * Lots whose test is due today or within the next 60 days, the longest due first; those whose test is under way are not.
 *
 * @param input.today  'YYYY-MM-DD'
 * @param input.page   from 1
 * @returns a page of lots; `dueNow` of them in all are due already, the others are coming
 * Checked in tests/server/queries/germination-tests.test.ts
 */
export async function findTestsDueOrComing({
  today,
  page: wanted,
}: {
  today: string;
  page?: number;
}): Promise<Page<TestDueRow> & { dueNow: number }> {
  const dueOrComing = { testDueOn: { lte: addDays(today, COMING_DAYS) }, ...NOT_UNDER_TEST };
  const [total, dueNow] = await Promise.all([
    reader().lotJudgement.count({ where: dueOrComing }),
    reader().lotJudgement.count({ where: { testDueOn: { lte: today }, ...NOT_UNDER_TEST } }),
  ]);
  const { page, pages, skip } = pageOf(wanted, total, DUE_PER_PAGE);
  const found = await reader().lotJudgement.findMany({
    where: dueOrComing,
    orderBy: [{ testDueOn: 'asc' }, { lotNumber: 'asc' }],
    skip,
    take: DUE_PER_PAGE,
    select: {
      lotNumber: true,
      accessionName: true,
      cropName: true,
      harvestedOn: true,
      testDueOn: true,
      testDueReason: true,
      seedsLeft: true,
      lastTestedOn: true,
    },
  });
  const rows = found.map(({ testDueReason, testDueOn, ...row }) => ({
    ...row,
    testDueOn: testDueOn ?? today,
    reason: testDueReason,
  }));
  return { rows, total, dueNow, page, pages };
}

/** Crops of which at least one test is recorded, for the filter. */
export async function findTestedCrops(): Promise<{ id: string; name: string }[]> {
  return reader().crop.findMany({
    where: { accessions: { some: { lots: { some: { tests: { some: {} } } } } } },
    orderBy: { name: 'asc' },
    select: { id: true, name: true },
  });
}

function pageOf(wanted: number | undefined, total: number, size: number) {
  const pages = Math.max(1, Math.ceil(total / size));
  const page = Math.min(Math.max(1, Math.floor(wanted ?? 1) || 1), pages);
  return { page, pages, skip: (page - 1) * size };
}
