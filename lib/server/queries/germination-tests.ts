import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { addDays } from '../../domain/calendar/calendar-date';
import { reader } from '../database/connections';

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

/** Tests due within this many days are shown as coming. */
const COMING_DAYS = 60;

/**
 * Recorded tests, newest first.
 *
 * @param filter.cropId  only this crop
 * @param filter.text    found in the test's number, the lot's number, or the accession's name or number
 * @param filter.page    from 1
 * Checked in tests/server/queries/germination-tests.test.ts
 */
export async function findGerminationTests(filter: {
  cropId?: string;
  text?: string;
  page?: number;
}): Promise<Page<GerminationTestRow>> {
  const where = matching(filter);
  const total = await reader().germinationTest.count({ where });
  const { page, pages, skip } = pageOf(filter.page, total, TESTS_PER_PAGE);
  const tests = await reader().germinationTest.findMany({
    where,
    orderBy: [{ finishedOn: 'desc' }, { id: 'desc' }],
    skip,
    take: TESTS_PER_PAGE,
    select: {
      number: true,
      finishedOn: true,
      correctedBy: { select: { number: true } },
      lot: {
        select: { number: true, accession: { select: { name: true, crop: { select: { name: true } } } } },
      },
      replicates: { select: { seeds: true, normal: true, hard: true, fresh: true } },
    },
  });
  const rows = tests.map(({ lot, replicates, correctedBy, ...test }) => ({
    ...test,
    lotNumber: lot.number,
    accessionName: lot.accession.name,
    cropName: lot.accession.crop.name,
    replicateCount: replicates.length,
    seeds: replicates.reduce((sum, dish) => sum + dish.seeds, 0),
    normal: replicates.reduce((sum, dish) => sum + dish.normal, 0),
    alive: replicates.reduce((sum, dish) => sum + dish.normal + dish.hard + dish.fresh, 0),
    correctedByNumber: correctedBy?.number ?? null,
  }));
  return { rows, total, page, pages };
}

function matching({ cropId, text }: { cropId?: string; text?: string }): Prisma.GerminationTestWhereInput {
  const wanted = text?.trim();
  return {
    ...(cropId ? { lot: { accession: { cropId } } } : {}),
    ...(wanted
      ? {
          OR: [
            { number: { contains: wanted } },
            { lot: { number: { contains: wanted } } },
            { lot: { accession: { name: { contains: wanted } } } },
            { lot: { accession: { number: { contains: wanted } } } },
          ],
        }
      : {}),
  };
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
 * Lots whose test is due today or within the next 60 days, the longest due first.
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
  const where = { testDueOn: { lte: addDays(today, COMING_DAYS) } };
  const [total, dueNow] = await Promise.all([
    reader().lotJudgement.count({ where }),
    reader().lotJudgement.count({ where: { testDueOn: { lte: today } } }),
  ]);
  const { page, pages, skip } = pageOf(wanted, total, DUE_PER_PAGE);
  const found = await reader().lotJudgement.findMany({
    where,
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
