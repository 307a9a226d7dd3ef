/**
 * A plausibility check of the constants chosen for a crop: how long would its seed take to lose one probit
 * (about 98 to 84 % alive) open in an ordinary room, and is that in keeping with the storage life that growers'
 * tables give? It guards borrowed constants against a gross mismatch; it does not make them right. Growers count
 * years of usable stands, not probits, so only the order of size can be compared.
 */
import { sigmaDays } from '../longevity/viability-equation';
import { equilibriumMoisture } from '../moisture/equilibrium';
import { factSpan } from './all-crops';
import type { CropFacts } from './crop-facts';
import { getLongevityConstants, type LongevityConstants } from './longevity-constants';

/** An ordinary cool, dry room. */
export const ORDINARY_ROOM = { temperatureC: 20, relativeHumidity: 0.5 };
/** Borrowed constants should come within this factor of the ordinary storage life, either way. */
export const TOLERATED_FACTOR = 3;

const DAYS_PER_YEAR = 365.25;

export type OrdinaryRoomCheck =
  | {
      ok: true;
      /** Middle of the oil range, fraction of dry weight. */
      oilFraction: number;
      /** Percent of fresh weight in equilibrium with the room. */
      moisturePercent: number;
      /** Years to lose one probit in the room. */
      yearsPerProbit: number;
      /** Storage life in growers' tables, years. */
      storageLife: { lower: number; upper: number };
      /** yearsPerProbit over the geometric middle of the storage life: 1 agrees, above 1 is optimistic. */
      ratio: number;
      withinTolerance: boolean;
    }
  | { ok: false; reason: 'oil-not-known' | 'storage-life-not-known' };

/**
 * Years for seed of given oil content to lose one probit, open at 20 C and 50 % relative humidity.
 *
 * @param constants constants of the viability equation
 * @param oilFraction oil as a fraction of dry weight, 0-0.8
 * @returns moisture in percent of fresh weight, and years per probit
 * @throws RangeError when oilFraction is out of range
 * Checked against R: tests/golden/reference-ordinary-room.json
 */
export function ordinaryRoomAgeing(
  constants: Pick<LongevityConstants, 'KE' | 'CW' | 'CH' | 'CQ'>,
  oilFraction: number,
): { moisturePercent: number; yearsPerProbit: number } {
  const { temperatureC } = ORDINARY_ROOM;
  const moisturePercent = equilibriumMoisture({ ...ORDINARY_ROOM, oilFraction });
  return { moisturePercent, yearsPerProbit: sigmaDays(constants, { moisturePercent, temperatureC }) / DAYS_PER_YEAR };
}

/**
 * Holds a crop's constants against its ordinary storage life.
 *
 * @param crop crop with its oil fraction, storage life and constants
 * @returns the comparison, or the reason why there is none
 * @throws RangeError when the crop names constants that do not exist
 * Checked in tests/domain/reference/ordinary-room-check.test.ts
 */
export function checkOrdinaryRoom(crop: CropFacts): OrdinaryRoomCheck {
  const oil = factSpan(crop, 'oil fraction');
  if (!oil.ok) return { ok: false, reason: 'oil-not-known' };
  const life = factSpan(crop, 'storage life');
  if (!life.ok) return { ok: false, reason: 'storage-life-not-known' };
  const oilFraction = (oil.lower + oil.upper) / 2;
  const ageing = ordinaryRoomAgeing(getLongevityConstants(crop.longevityConstantsKey), oilFraction);
  const ratio = ageing.yearsPerProbit / Math.sqrt(life.lower * life.upper);
  return {
    ok: true,
    oilFraction,
    ...ageing,
    storageLife: { lower: life.lower, upper: life.upper },
    ratio,
    withinTolerance: ratio <= TOLERATED_FACTOR && ratio >= 1 / TOLERATED_FACTOR,
  };
}
