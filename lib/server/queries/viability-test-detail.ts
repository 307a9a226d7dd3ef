import 'server-only';
import { addDays, daysBetween } from '@/lib/domain/calendar/calendar-date';
import type { StoredViabilityCounts, ViabilityKind } from '@/lib/domain/germination/dormancy/viability-kinds';
import { reader } from '../database/connections';
import { type UngerminatedSeed, ungerminatedSeed } from '../trays/ungerminated-seed';
import { findHistory, type HistoryLine } from './history';
import { type CropForTesting, cropForTesting, selectCropForTesting } from './lots-for-testing';
import { SELECT_COUNTS, viabilityKind } from './viability-tests';

/** Within so many days a lot hardly ages, and its tests should agree. Our own choice, as for germination tests. */
const ONE_TIME_DAYS = 180;

/** A tetrazolium or cut test with all that its page says. */
export interface ViabilityTestDetail {
  id: string;
  number: string;
  kind: ViabilityKind;
  testedOn: string;
  counts: StoredViabilityCounts;
  method: string | null;
  notes: string | null;
  packet: { id: string; number: string } | null;
  /** what the ledger says was taken out for it, by this test or the one it corrects; null where nothing was */
  takenOut: { on: string; seeds: number } | null;
  /** the tray whose seed left over was examined, as it stands now; null for seed from a packet */
  tray: UngerminatedSeed | null;
  lot: {
    number: string;
    accessionName: string;
    harvestedOn: string;
    treatment: string | null;
    /** the band of its forecast today, proportions; null without one */
    forecast: { median: number; lower: number; upper: number } | null;
    noForecastBecause: string | null;
  };
  crop: CropForTesting;
  /** the lot's germination test nearest in time, within half a year; leaving out what was corrected since */
  germination: { number: string; finishedOn: string; seeds: number; normal: number } | null;
  /** every version of this test, oldest first, this one included */
  versions: { number: string }[];
  correctedByNumber: string | null;
  /** who wrote what, newest first */
  history: HistoryLine[];
}

/**
 * One tetrazolium or cut test by the number people read.
 *
 * @returns null when there is no such test
 * Checked in tests/server/queries/viability-tests.test.ts
 */
export async function getViabilityTest(number: string): Promise<ViabilityTestDetail | null> {
  const test = await reader().viabilityTest.findUnique({
    where: { number },
    select: {
      ...{ id: true, number: true, kind: true, testedOn: true, method: true, notes: true, lotId: true, trayId: true },
      ...SELECT_COUNTS,
      packet: { select: { id: true, number: true } },
      correctedBy: { select: { number: true } },
      lot: {
        select: {
          number: true,
          harvestedOn: true,
          treatment: true,
          judgement: {
            select: { viabilityMedian: true, viabilityLower: true, viabilityUpper: true, noForecastBecause: true },
          },
          accession: { select: { name: true, crop: { select: selectCropForTesting } } },
        },
      },
    },
  });
  if (!test) return null;
  const [versions, tray, germination, history] = await Promise.all([
    findVersions(test.id),
    test.trayId ? ungerminatedSeed(reader(), { id: test.trayId }) : null,
    findGerminationNear(test),
    findHistory([{ entity: 'viability test', ids: [test.id] }]),
  ]);
  const { lot, kind, correctedBy } = test;
  const { stainedNormally, stainedAbnormally, unstained, firm, empty, insectDamaged, dead } = test;
  return {
    ...{ id: test.id, number: test.number, kind: viabilityKind(kind), testedOn: test.testedOn },
    counts: { stainedNormally, stainedAbnormally, unstained, firm, empty, insectDamaged, dead },
    ...{ method: test.method, notes: test.notes, packet: test.packet, tray },
    takenOut: takenOutFor(versions),
    lot: {
      number: lot.number,
      accessionName: lot.accession.name,
      harvestedOn: lot.harvestedOn,
      treatment: lot.treatment,
      forecast: bandOf(lot.judgement),
      noForecastBecause: lot.judgement?.noForecastBecause ?? null,
    },
    crop: cropForTesting(lot.accession.crop),
    germination,
    versions: versions.map((version) => ({ number: version.number })),
    correctedByNumber: correctedBy?.number ?? null,
    history,
  };
}

interface Version {
  number: string;
  takenOn: string | null;
  taken: bigint | null;
}

/** The chain of corrections through one test: each test is corrected at most once, so it is a line. */
const findVersions = (testId: string): Promise<Version[]> =>
  reader().$queryRaw<Version[]>`
    WITH RECURSIVE
      earlier("id", "correctsId") AS (
        SELECT "id", "correctsId" FROM "ViabilityTest" WHERE "id" = ${testId}
        UNION SELECT t."id", t."correctsId" FROM "ViabilityTest" t JOIN earlier e ON t."id" = e."correctsId"
      ),
      later("id") AS (
        SELECT ${testId}
        UNION SELECT t."id" FROM "ViabilityTest" t JOIN later l ON t."correctsId" = l."id"
      )
    SELECT t."number", m."on" AS "takenOn", -m."seeds" AS taken
    FROM "ViabilityTest" t LEFT JOIN "Movement" m ON m."id" = t."withdrawalId"
    WHERE t."id" IN (SELECT "id" FROM earlier UNION SELECT "id" FROM later) ORDER BY t."id"`;

function takenOutFor(versions: Version[]): ViabilityTestDetail['takenOut'] {
  const first = versions.find(({ taken }) => taken !== null);
  return first?.takenOn ? { on: first.takenOn, seeds: Number(first.taken) } : null;
}

async function findGerminationNear(test: {
  lotId: string;
  testedOn: string;
}): Promise<ViabilityTestDetail['germination']> {
  const near = await reader().germinationTest.findMany({
    where: {
      lotId: test.lotId,
      correctedBy: null,
      setOn: { lte: addDays(test.testedOn, ONE_TIME_DAYS) },
      finishedOn: { gte: addDays(test.testedOn, -ONE_TIME_DAYS) },
    },
    select: {
      number: true,
      setOn: true,
      finishedOn: true,
      replicates: { select: { seeds: true, normal: true } },
    },
    orderBy: { id: 'asc' },
  });
  const nearest = near.sort((a, b) => daysFrom(test.testedOn, a) - daysFrom(test.testedOn, b))[0];
  if (!nearest) return null;
  const { number, finishedOn, replicates } = nearest;
  return {
    ...{ number, finishedOn },
    seeds: replicates.reduce((sum, dish) => sum + dish.seeds, 0),
    normal: replicates.reduce((sum, dish) => sum + dish.normal, 0),
  };
}

/** Days between a day and a test that lasted some days; 0 while it lasted. */
const daysFrom = (day: string, { setOn, finishedOn }: { setOn: string; finishedOn: string }) =>
  Math.max(0, daysBetween(finishedOn, day), daysBetween(day, setOn));

function bandOf(
  judgement: { viabilityMedian: number | null; viabilityLower: number | null; viabilityUpper: number | null } | null,
): ViabilityTestDetail['lot']['forecast'] {
  const { viabilityMedian: median, viabilityLower: lower, viabilityUpper: upper } = judgement ?? {};
  return median == null || lower == null || upper == null ? null : { median, lower, upper };
}
