import 'server-only';
import { addDays } from '../../domain/calendar/calendar-date';
import type { ClassedReplicate } from '../../domain/germination/seed-classes';
import { reader } from '../database/connections';
import { findHistory, type HistoryLine } from './history';
import { type CropForTesting, cropForTesting, selectCropForTesting } from './lots-for-testing';

/** Within so many days a lot hardly ages, and its tests should agree. Our own choice. */
const ONE_TIME_DAYS = 180;

export interface EarlierTest {
  number: string;
  setOn: string;
  finishedOn: string;
  seeds: number;
  normal: number;
}

/** Earlier tests shown beside one: the newest; the lot's page has all. */
const EARLIER_SHOWN = 8;

/** A recorded test with all that its page says. */
export interface GerminationTestDetail {
  id: string;
  number: string;
  setOn: string;
  finishedOn: string;
  method: string | null;
  notes: string | null;
  recordedAt: Date;
  packet: { id: string; number: string } | null;
  /** the tray whose counts it sums up; null when it was written down by hand */
  tray: { id: string; number: string; status: string; seriesId: string } | null;
  lot: {
    id: string;
    number: string;
    harvestedOn: string;
    treatment: string | null;
    accessionNumber: string;
    accessionName: string;
    nextTestDueOn: string | null;
    nextTestReason: string | null;
  };
  crop: CropForTesting;
  replicates: (ClassedReplicate & { position: number })[];
  /** every version of this test, oldest first, this one included */
  versions: { id: string; number: string; recordedAt: Date }[];
  correctedByNumber: string | null;
  /** the lot's test before this one, leaving out what was corrected since */
  before: EarlierTest | null;
  /** the lot's tests before this one, newest first, leaving out what was corrected since */
  earlier: EarlierTest[];
  /** the lot's tests of about the same time, this one included; leaving out what was corrected since */
  ofOneTime: { seeds: number; normal: number }[];
  /** the lot's newest test, when it is a later one than this; leaving out what was corrected since */
  newest: { number: string; finishedOn: string } | null;
  /** who wrote what of any version of it, newest first: why a correction is there stands with the one it corrects */
  history: HistoryLine[];
}

/**
 * One recorded test by the number people read.
 *
 * @returns null when there is no such test
 * Checked in tests/server/queries/germination-tests.test.ts
 */
export async function getGerminationTest(number: string): Promise<GerminationTestDetail | null> {
  const test = await reader().germinationTest.findUnique({
    where: { number },
    include: {
      packet: { select: { id: true, number: true } },
      tray: { select: { id: true, number: true, status: true, seriesId: true } },
      correctedBy: { select: { number: true } },
      replicates: { omit: { testId: true }, orderBy: { position: 'asc' } },
      lot: {
        select: {
          id: true,
          number: true,
          harvestedOn: true,
          treatment: true,
          judgement: { select: { testDueOn: true, testDueReason: true } },
          accession: { select: { number: true, name: true, crop: { select: selectCropForTesting } } },
        },
      },
    },
  });
  if (!test) return null;
  const versions = await findVersions(test.id);
  const [earlier, ofOneTime, newest, history] = await Promise.all([
    findEarlierTests(test),
    findTestsOfOneTime(test),
    findNewestTest(test),
    findHistory([{ entity: 'germination test', ids: versions.map(({ id }) => id) }]),
  ]);
  const { lot } = test;
  return {
    id: test.id,
    number: test.number,
    setOn: test.setOn,
    finishedOn: test.finishedOn,
    method: test.method,
    notes: test.notes,
    recordedAt: test.recordedAt,
    packet: test.packet,
    tray: test.tray,
    lot: {
      id: lot.id,
      number: lot.number,
      harvestedOn: lot.harvestedOn,
      treatment: lot.treatment,
      accessionNumber: lot.accession.number,
      accessionName: lot.accession.name,
      nextTestDueOn: lot.judgement?.testDueOn ?? null,
      nextTestReason: lot.judgement?.testDueReason ?? null,
    },
    crop: cropForTesting(lot.accession.crop),
    replicates: test.replicates,
    versions,
    correctedByNumber: test.correctedBy?.number ?? null,
    before: earlier[0] ?? null,
    earlier,
    ofOneTime,
    newest,
    history,
  };
}

/** The chain of corrections through one test: each test is corrected at most once, so it is a line. */
async function findVersions(testId: string): Promise<GerminationTestDetail['versions']> {
  return reader().$queryRaw<{ id: string; number: string; recordedAt: Date }[]>`
    WITH RECURSIVE
      earlier("id", "correctsId") AS (
        SELECT "id", "correctsId" FROM "GerminationTest" WHERE "id" = ${testId}
        UNION SELECT t."id", t."correctsId" FROM "GerminationTest" t JOIN earlier e ON t."id" = e."correctsId"
      ),
      later("id") AS (
        SELECT ${testId}
        UNION SELECT t."id" FROM "GerminationTest" t JOIN later l ON t."correctsId" = l."id"
      )
    SELECT "id", "number", "recordedAt" FROM "GerminationTest"
    WHERE "id" IN (SELECT "id" FROM earlier UNION SELECT "id" FROM later) ORDER BY "id"`;
}

async function findEarlierTests(test: { id: string; lotId: string; finishedOn: string }): Promise<EarlierTest[]> {
  const tests = await reader().germinationTest.findMany({
    where: {
      lotId: test.lotId,
      correctedBy: null,
      OR: [
        { finishedOn: { lt: test.finishedOn } },
        // Of two that finished on one day, the one written down first came before.
        { finishedOn: test.finishedOn, id: { lt: test.id } },
      ],
    },
    orderBy: [{ finishedOn: 'desc' }, { id: 'desc' }],
    take: EARLIER_SHOWN,
    select: { number: true, setOn: true, finishedOn: true, replicates: { select: { seeds: true, normal: true } } },
  });
  return tests.map(({ replicates, ...earlier }) => ({ ...earlier, ...totals(replicates) }));
}

async function findTestsOfOneTime(test: { lotId: string; setOn: string; finishedOn: string }) {
  const tests = await reader().germinationTest.findMany({
    where: {
      lotId: test.lotId,
      correctedBy: null,
      setOn: { gte: addDays(test.setOn, -ONE_TIME_DAYS) },
      finishedOn: { lte: test.finishedOn },
    },
    select: { replicates: { select: { seeds: true, normal: true } } },
  });
  return tests.map(({ replicates }) => totals(replicates));
}

const totals = (dishes: { seeds: number; normal: number }[]) => ({
  seeds: dishes.reduce((sum, dish) => sum + dish.seeds, 0),
  normal: dishes.reduce((sum, dish) => sum + dish.normal, 0),
});

async function findNewestTest(test: { id: string; lotId: string; finishedOn: string }) {
  return reader().germinationTest.findFirst({
    where: { lotId: test.lotId, correctedBy: null, finishedOn: { gt: test.finishedOn } },
    orderBy: [{ finishedOn: 'desc' }, { id: 'desc' }],
    select: { number: true, finishedOn: true },
  });
}
