import 'server-only';
import { connections } from '../database/connections';
import { loadCropJudging } from '../judging/load-crop-judging';
import { storeClimates } from '../judging/store-climates';
import { today } from '../today';
import { type LotHit, lotsHardestHit } from './lots-hardest-hit';
import { packetsInStretch } from './packets-in-stretch';
import type { StoreClimatePage, StoreExcursion } from './store-climate';
import { type CostliestSeed, type CropCost, costliestOf, stretchCost, type UncountedSeed } from './stretch-cost';

export interface Failure {
  excursion: StoreExcursion;
  costliest: CostliestSeed;
}

export interface StoreClimateCost {
  /** packets with seed that lay there, in all */
  packets: number;
  crops: CropCost[];
  lots: LotHit[];
  uncounted: UncountedSeed[];
  /** excursions that cost something, the costliest first */
  failures: Failure[];
}

/** What a store's climate cost the seed that lay in it, and in the stores inside it, over a stretch of days. */
export function getStoreClimateCost(storeId: string, page: StoreClimatePage): StoreClimateCost {
  const { rows } = connections();
  const climates = storeClimates(rows);
  const { fromDay, toDay } = page;
  const packets = packetsInStretch(rows, climates, storeId, { fromDay, toDay, today: today() });
  const crops = loadCropJudging(rows, new Set(packets.map(({ cropId }) => cropId)));
  const cost = stretchCost(packets, crops, climates);
  const costliest = costliestOf(packets, crops, climates);
  return {
    packets: packets.length,
    crops: cost.crops,
    lots: lotsHardestHit(rows, cost.packets, crops, climates, today()),
    uncounted: cost.uncounted,
    failures: ofDifferentDays(page.excursions)
      .flatMap((excursion): Failure[] => {
        const most = costliest(excursion.fromDay, excursion.toDay);
        return most ? [{ excursion, costliest: most }] : [];
      })
      .sort((a, b) => b.costliest.normalDays - a.costliest.normalDays),
  };
}

/** Two excursions on the same day have one cost between them: costs are of whole days. */
function ofDifferentDays(excursions: readonly StoreExcursion[]): StoreExcursion[] {
  return [...new Map(excursions.map((one) => [`${one.fromDay} ${one.toDay}`, one])).values()];
}
