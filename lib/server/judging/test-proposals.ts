import type Database from 'better-sqlite3';
import { daysBetween, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { beliefInViability } from '@/lib/domain/germination/plan/belief';
import { freshSeedExpected } from '@/lib/domain/germination/plan/fresh-seed-advice';
import { proposeTest, type TestProposal } from '@/lib/domain/germination/plan/propose-test';
import { seedForTest } from '@/lib/domain/germination/plan/seed-for-test';
import { type EvaluatedLot, evaluateLot } from './evaluate-lot';
import { loadCropJudging } from './load-crop-judging';
import { type LotRecord, loadLots } from './load-lots';
import { storeClimates } from './store-climates';

/** What planning a lot's test rests on. */
export interface LotProposal {
  proposal: TestProposal;
  /** the packet that the seed would come from: active, with most seed; null: no packet of the bank's own holds any */
  packetId: string | null;
  /** seeds to regrow the lot once; Infinity when no number is enough; null without a forecast */
  seedsNeeded: number | null;
  freshSeedExpected: boolean;
}

/**
 * The test proposed for each of these lots, by the same evaluation as their judgement.
 *
 * @param rows    a connection that reads
 * @param lotIds  which lots: those on one page
 * @param today   calendar date
 * @returns by lot id
 * Checked in tests/server/queries/lots-to-plan.test.ts
 */
export function testProposals(
  rows: Database.Database,
  lotIds: readonly string[],
  today: string,
): Map<string, LotProposal> {
  const lots = loadLots(rows, [...new Set(lotIds)]);
  const crops = loadCropJudging(rows, new Set(lots.map((lot) => lot.cropId)));
  const climates = storeClimates(rows);
  return new Map(
    lots.map((lot) => {
      const crop = crops.get(lot.cropId);
      if (!crop) throw new Error(`the crop of lot ${lot.number} does not exist`);
      // Whether other lots have seed decides urgency, not how a lot is tested.
      return [lot.id, proposalFor(evaluateLot(lot, crop, climates, { isOnlyLot: false }, today), today)];
    }),
  );
}

function proposalFor({ lot, judgement, posterior, ageing, tests }: EvaluatedLot, today: string): LotProposal {
  const hasForecast = judgement.forecastRefusal === null && posterior !== null && ageing?.ok === true;
  const own = lot.packets.filter(({ role, seeds }) => role !== 'safety-duplicate' && seeds > 0);
  const packet = packetToDrawFrom(own);
  const needed = hasForecast ? judgement.seedsNeeded : null;
  const held = own.reduce((sum, { seeds }) => sum + seeds, 0);
  const last = tests.at(-1);
  return {
    proposal: proposeTest({
      belief: hasForecast ? beliefInViability(posterior, ageing.probitsAt(toEpochDay(today))) : null,
      line: hasForecast ? judgement.threshold : null,
      seedsToSpare: Math.min(seedForTest(held, needed), packet?.seeds ?? 0),
      everTested: last !== undefined,
    }),
    packetId: packet?.id ?? null,
    seedsNeeded: needed,
    freshSeedExpected: freshSeedExpected({
      daysSinceHarvest: Math.max(0, daysBetween(lot.harvestedOn, today)),
      lastTest: last ? { seeds: last.sown, fresh: last.replicates.reduce((sum, { fresh }) => sum + fresh, 0) } : null,
    }),
  };
}

/** Base stock is left closed while there is active stock. */
function packetToDrawFrom(packets: LotRecord['packets']) {
  const active = packets.filter(({ role }) => role === 'active');
  return (active.length > 0 ? active : packets).reduce<LotRecord['packets'][number] | null>(
    (most, packet) => (most && most.seeds >= packet.seeds ? most : packet),
    null,
  );
}
