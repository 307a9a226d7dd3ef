import type Database from 'better-sqlite3';
import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { seedsForRegrowings } from '@/lib/domain/regrow/seeds-for-regrowings';
import { REGROWINGS_KEPT } from '@/lib/domain/stock/seed-to-spare';
import { evaluateLot } from './evaluate-lot';
import { loadCropJudging } from './load-crop-judging';
import { loadLots } from './load-lots';
import { storeClimates } from './store-climates';

/**
 * Seeds that must stay of each lot so that it can be regrown as often as is kept for: reckoned anew for the few lots
 * that a page or a command is about, by the same evaluation as their judgement.
 *
 * @param rows    a connection that reads
 * @param lotIds  which lots
 * @param today   calendar date
 * @returns by lot id: seeds for all regrowings together; Infinity where no number is enough, null without a forecast
 * Checked in tests/server/queries/lots-to-share.test.ts
 */
export function regrowingNeeds(
  rows: Database.Database,
  lotIds: readonly string[],
  today: string,
): Map<string, number | null> {
  const lots = loadLots(rows, [...new Set(lotIds)]);
  const crops = loadCropJudging(rows, new Set(lots.map((lot) => lot.cropId)));
  const climates = storeClimates(rows);
  const needs = new Map<string, number | null>();
  for (const lot of lots) {
    const crop = crops.get(lot.cropId);
    if (!crop) throw new Error(`the crop of lot ${lot.number} does not exist`);
    // Whether other lots have seed decides urgency, not how many seeds a sowing takes.
    const { judgement, posterior, ageing } = evaluateLot(lot, crop, climates, { isOnlyLot: false }, today);
    if (judgement.forecastRefusal !== null || posterior === null || !ageing?.ok) {
      needs.set(lot.id, null);
      continue;
    }
    const seeds = seedsForRegrowings({
      today,
      sowingMonth: crop.sowingMonth,
      posterior,
      probitsLostNow: ageing.probitsAt(toEpochDay(today)),
      probitsPerDay: ageing.ratePerDay,
      plants: crop.plantsNeeded,
      emergence: crop.emergence,
      assurance: crop.assurance,
      regrowings: REGROWINGS_KEPT,
    });
    needs.set(
      lot.id,
      seeds.reduce((sum, one) => sum + one, 0),
    );
  }
  return needs;
}
