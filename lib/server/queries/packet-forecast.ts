import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { type LotPosterior, viabilityAt } from '@/lib/domain/longevity/lot-model';
import type { MoistureSource } from '@/lib/domain/moisture/moisture-source';
import { ageingOfPacket } from '../judging/age-tests';
import type { EvaluatedLot } from '../judging/evaluate-lot';
import type { CropJudging } from '../judging/load-crop-judging';
import type { StoreClimates } from '../judging/store-climates';

/**
 * How alive the seed of one packet is today: the lot's own belief (its tests, its rate of ageing) taken to the ageing
 * that this packet has been through. Packets of a lot differ only by where they have been since they were split.
 */
export type PacketForecast =
  | {
      ok: true;
      /** proportions; nine times in ten the truth lies between lower and upper */
      median: number;
      lower: number;
      upper: number;
      /** ageing so far, probits */
      probitsLost: number;
      /** alive in ten years, if it goes on lying where it does: proportion */
      inTenYears: number;
      /** percent of fresh weight */
      moisturePercent: number;
      moistureFrom: MoistureSource;
    }
  | { ok: false; reason: string };

const LEVEL = 0.9;
const TEN_YEARS_IN_DAYS = 3652.5;

/**
 * @param evaluated  the lot, from evaluateLot
 * @returns by packet id; every packet of the lot has its entry
 * Checked in tests/server/queries/packet-forecast.test.ts
 */
export function packetForecasts(
  { lot, posterior }: Pick<EvaluatedLot, 'lot' | 'posterior'>,
  crop: CropJudging,
  climates: StoreClimates,
  today: string,
): Map<string, PacketForecast> {
  const day = toEpochDay(today);
  return new Map(
    lot.packets.map((packet): [string, PacketForecast] => {
      const ageing = ageingOfPacket(packet, crop, climates, today);
      if (!ageing) {
        const reason = crop.seed
          ? 'Nobody wrote down where it has been.'
          : 'No longevity constants are chosen for its crop.';
        return [packet.id, { ok: false, reason }];
      }
      if (!ageing.ok) return [packet.id, ageing];
      // The lot is judged by its fullest packet: where that one bears no forecast, nothing was fitted.
      if (!posterior) return [packet.id, { ok: false, reason: 'The lot it belongs to has no forecast.' }];
      const probitsLost = ageing.probitsAt(day);
      return [
        packet.id,
        {
          ok: true,
          ...viabilityAt(posterior, { probitsLost, level: LEVEL }),
          probitsLost,
          inTenYears: medianAt(posterior, ageing.probitsAt(day + TEN_YEARS_IN_DAYS)),
          moisturePercent: ageing.moisturePercent,
          moistureFrom: ageing.moistureFrom,
        },
      ];
    }),
  );
}

const medianAt = (posterior: LotPosterior, probitsLost: number) =>
  viabilityAt(posterior, { probitsLost, level: LEVEL }).median;
