import type { Prisma } from '@/generated/prisma/client';
import { dishStates } from '@/lib/domain/germination/bench/dish-state';
import { selectCount, type WrittenCount, writtenCount } from './count-row';

/** A tray's seed that did not grow, and how much of it was stained or cut already. */
export interface UngerminatedSeed {
  id: string;
  number: string;
  lotId: string;
  status: string;
  setOn: string;
  packet: { id: string; number: string } | null;
  /** seeds set */
  seeds: number;
  /** as classed so far: by the test that stands once it is closed, by its counts until then */
  normal: number;
  abnormal: number;
  hardOrFresh: number;
  /** seeds that nobody has classed yet; 0 once it is closed */
  unclassed: number;
  /** the test that closing wrote, or what it was corrected to; null until then */
  testNumber: string | null;
  /** of its seed, by tests that no later entry corrects */
  examined: { id: string; number: string; kind: string; seeds: number; alive: number }[];
}

/**
 * @param where  number or id of the tray
 * @returns null when there is no such tray
 * Checked in tests/server/commands/record-viability-test.test.ts
 */
export async function ungerminatedSeed(
  database: Pick<Prisma.TransactionClient, 'tray' | '$queryRaw'>,
  where: { id: string } | { number: string },
): Promise<UngerminatedSeed | null> {
  const tray = await database.tray.findUnique({
    where: where as { id: string },
    select: {
      id: true,
      number: true,
      lotId: true,
      status: true,
      setOn: true,
      packet: { select: { id: true, number: true } },
      dishes: { select: { id: true, position: true, seeds: true }, orderBy: { position: 'asc' } },
      counts: { select: selectCount, orderBy: { id: 'asc' } },
      viabilityTests: { where: { correctedBy: null }, orderBy: { id: 'asc' } },
    },
  });
  if (!tray) return null;
  const { dishes, counts, viabilityTests, ...rest } = tray;
  const seeds = dishes.reduce((sum, dish) => sum + dish.seeds, 0);
  const [closed] = tray.status === 'closed' ? await standingTest(database, tray.id) : [];
  return {
    ...rest,
    ...(closed
      ? { ...numbersOf(closed), unclassed: 0, testNumber: closed.number }
      : { seeds, ...classedSoFar(dishes, counts.map(writtenCount)), testNumber: null }),
    examined: viabilityTests.map((test) => ({
      id: test.id,
      number: test.number,
      kind: test.kind,
      seeds:
        (test.stainedNormally ?? 0) +
        (test.stainedAbnormally ?? 0) +
        (test.unstained ?? 0) +
        (test.firm ?? 0) +
        (test.empty ?? 0) +
        (test.insectDamaged ?? 0) +
        (test.dead ?? 0),
      alive: (test.stainedNormally ?? 0) + (test.firm ?? 0),
    })),
  };
}

interface Classed {
  number: string;
  seeds: bigint;
  normal: bigint;
  abnormal: bigint;
  hardOrFresh: bigint;
}

const numbersOf = ({ seeds, normal, abnormal, hardOrFresh }: Classed) => ({
  seeds: Number(seeds),
  normal: Number(normal),
  abnormal: Number(abnormal),
  hardOrFresh: Number(hardOrFresh),
});

/** What closing wrote, or what that was corrected to since, by hand or by closing it again. */
const standingTest = (database: Pick<Prisma.TransactionClient, '$queryRaw'>, trayId: string): Promise<Classed[]> =>
  database.$queryRaw<Classed[]>`
    WITH RECURSIVE version("id") AS (
      SELECT "id" FROM "GerminationTest" WHERE "trayId" = ${trayId}
      UNION SELECT t."id" FROM "GerminationTest" t JOIN version v ON t."correctsId" = v."id")
    SELECT t."number", SUM(r."seeds") AS seeds, SUM(r."normal") AS normal, SUM(r."abnormal") AS abnormal,
      SUM(r."hard" + r."fresh") AS "hardOrFresh"
    FROM "GerminationTest" t JOIN "Replicate" r ON r."testId" = t."id"
    WHERE t."id" IN (SELECT "id" FROM version)
      AND NOT EXISTS (SELECT 1 FROM "GerminationTest" c WHERE c."correctsId" = t."id")
    GROUP BY t."id" LIMIT 1`;

function classedSoFar(dishes: { id: string; position: number; seeds: number }[], counts: WrittenCount[]) {
  const states = dishStates(dishes, counts);
  const sum = (of: (state: (typeof states)[number]) => number) => states.reduce((all, state) => all + of(state), 0);
  return {
    normal: sum(({ totals }) => totals.normal),
    abnormal: sum(({ totals }) => totals.abnormal),
    hardOrFresh: sum(({ totals }) => totals.hard + totals.fresh),
    // More counted than set is a slip that somebody will settle: it leaves nothing to be classed.
    unclassed: sum(({ remaining }) => Math.max(0, remaining)),
  };
}
