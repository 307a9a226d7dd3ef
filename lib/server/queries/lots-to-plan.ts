import 'server-only';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import { incubatorKey, type MethodChoice, methodChoices } from '@/lib/domain/germination/plan/method-choices';
import { connections, reader } from '../database/connections';
import { type LotProposal, testProposals } from '../judging/test-proposals';
import type { TestingMethod } from './lots-for-testing';
import { lotsUnderTest, type UnderTest } from './under-test';

/** Tests due within so many days are shown as coming. */
export const COMING_DAYS = 60;
/** Lots of each group shown before one group is asked for, and on a page of that group. */
export const LOTS_SHOWN = 6;
const LOTS_PER_PAGE = 40;

/** A lot that may be tested, with what is known of it and what the test would take. */
export interface LotToPlan extends LotProposal {
  lotNumber: string;
  accessionName: string;
  cropId: string;
  cropName: string;
  harvestedOn: string;
  /** null: no test is due */
  testDueOn: string | null;
  reason: string | null;
  lastTestedOn: string | null;
  seedsLeft: number;
  viabilityMedian: number | null;
  viabilityLower: number | null;
  viabilityUpper: number | null;
  underTest: UnderTest | null;
  /** how the crop is tested in the first place; null: no method is known */
  method: MethodChoice<TestingMethod> | null;
}

/** Lots that can stand in one incubator. */
export interface LotsOfIncubator {
  /** see incubatorKey; null: crops without a method */
  key: string | null;
  /** as printed: '20-30' */
  temperatures: string | null;
  light: boolean;
  /** a page of them, by crop, the longest due first */
  lots: LotToPlan[];
  total: number;
  dueNow: number;
}

export interface LotsToPlan {
  groups: LotsOfIncubator[];
  total: number;
  dueNow: number;
  /** of the one group asked for */
  page: number;
  pages: number;
}

interface DueLot {
  lotId: string;
  cropId: string;
  testDueOn: string;
}

/**
 * Lots whose test is due, or will be within 60 days, and is not under way, put together by what trays must share to stand
 * in one incubator. Some ten statements, however many lots there are; only the lots shown have their test worked out.
 *
 * @param input.today  calendar date
 * @param input.group  key of the one group to show, '-' for crops without a method; all groups, a few lots each, if left out
 * @param input.page   of that group, from 1
 * @returns the group with most lots due first
 * Checked in tests/server/queries/lots-to-plan.test.ts
 */
export async function findLotsToPlan({
  today,
  group,
  page: wanted = 1,
}: {
  today: string;
  group?: string | undefined;
  page?: number;
}): Promise<LotsToPlan> {
  const due = connections()
    .rows.prepare<[string], DueLot>(
      `SELECT "lotId", "cropId", "testDueOn" FROM "LotJudgement"
       WHERE "testDueOn" <= ? AND "lotId" NOT IN (SELECT "lotId" FROM "Tray" WHERE "status" = 'open')
       ORDER BY "testDueOn", "lotNumber"`,
    )
    .all(addDays(today, COMING_DAYS));
  const methods = await mainMethods([...new Set(due.map(({ cropId }) => cropId))]);
  const byKey = new Map<string | null, DueLot[]>();
  for (const lot of due) {
    const key = incubatorKey(methods.get(lot.cropId));
    const alike = byKey.get(key);
    if (alike) alike.push(lot);
    else byKey.set(key, [lot]);
  }
  const isDue = ({ testDueOn }: DueLot) => testDueOn <= today;
  const groups = [...byKey]
    .map(([key, lots]) => ({ key, lots, dueNow: lots.filter(isDue).length }))
    .sort(
      (a, b) => Number(a.key === null) - Number(b.key === null) || b.dueNow - a.dueNow || b.lots.length - a.lots.length,
    )
    .filter(({ key }) => group === undefined || groupName(key) === group);
  const most = group === undefined ? LOTS_SHOWN : LOTS_PER_PAGE;
  const pages = group === undefined ? 1 : Math.max(1, Math.ceil((groups[0]?.lots.length ?? 0) / most));
  const page = Math.min(Math.max(1, wanted), pages);
  const shown = groups.map(({ lots }) => lots.slice((page - 1) * most, page * most).map(({ lotId }) => lotId));
  const lots = await readLots(shown.flat(), today);
  return {
    groups: groups.map(({ key, lots: all, dueNow }, index) => {
      const choice = methods.get(all[0]?.cropId ?? '');
      return {
        key,
        temperatures: choice?.temperatures ?? null,
        light: choice?.light ?? false,
        lots: (shown[index] ?? []).flatMap((id) => lots.get(id) ?? []).sort(byCrop),
        total: all.length,
        dueNow,
      };
    }),
    total: due.length,
    dueNow: due.filter(isDue).length,
    page,
    pages,
  };
}

/** A group in an address. */
export const groupName = (key: string | null): string => key ?? '-';

/**
 * Lots by their numbers, due or not, as they stand in the plan.
 *
 * @returns those that exist and are judged, in the order asked
 * Checked in tests/server/queries/lots-to-plan.test.ts
 */
export async function getLotsToPlan(numbers: readonly string[], today: string): Promise<LotToPlan[]> {
  if (numbers.length === 0) return [];
  const ids = await reader().lotJudgement.findMany({
    where: { lotNumber: { in: [...numbers] } },
    select: { lotId: true },
  });
  const lots = await readLots(
    ids.map(({ lotId }) => lotId),
    today,
  );
  const byNumber = new Map([...lots.values()].map((lot) => [lot.lotNumber, lot]));
  return [...new Set(numbers)].flatMap((number) => byNumber.get(number) ?? []);
}

async function readLots(lotIds: readonly string[], today: string): Promise<Map<string, LotToPlan>> {
  if (lotIds.length === 0) return new Map();
  const judged = await reader().lotJudgement.findMany({
    where: { lotId: { in: [...lotIds] } },
    select: {
      lotId: true,
      lotNumber: true,
      accessionName: true,
      cropId: true,
      cropName: true,
      harvestedOn: true,
      testDueOn: true,
      testDueReason: true,
      lastTestedOn: true,
      seedsLeft: true,
      viabilityMedian: true,
      viabilityLower: true,
      viabilityUpper: true,
    },
  });
  const [underTest, methods] = await Promise.all([
    lotsUnderTest(judged.map(({ lotNumber }) => lotNumber)),
    mainMethods([...new Set(judged.map(({ cropId }) => cropId))]),
  ]);
  const proposals = testProposals(connections().rows, lotIds, today);
  return new Map(
    judged.flatMap(({ lotId, testDueReason, ...lot }) => {
      const proposal = proposals.get(lotId);
      if (!proposal) return [];
      const row: LotToPlan = {
        ...lot,
        ...proposal,
        reason: testDueReason,
        underTest: underTest.get(lot.lotNumber) ?? null,
        method: methods.get(lot.cropId) ?? null,
      };
      return [[lotId, row]];
    }),
  );
}

/** The first way of testing each crop; crops without a method are left out. */
async function mainMethods(cropIds: string[]): Promise<Map<string, MethodChoice<TestingMethod>>> {
  const methods = await reader().germinationMethod.findMany({
    where: { cropId: { in: cropIds } },
    orderBy: { id: 'asc' },
  });
  const first = new Map<string, MethodChoice<TestingMethod>>();
  for (const { cropId, ...method } of methods) {
    const [choice] = methodChoices([method]);
    if (choice && !first.has(cropId)) first.set(cropId, choice);
  }
  return first;
}

const byCrop = (a: LotToPlan, b: LotToPlan) =>
  a.cropName.localeCompare(b.cropName) ||
  (a.testDueOn ?? '9').localeCompare(b.testDueOn ?? '9') ||
  a.lotNumber.localeCompare(b.lotNumber);
