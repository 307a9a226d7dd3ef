/**
 * What reaches a goal: 'at least 85 % alive after 20 years, from 95 %'. At a given temperature the moistest seed that does,
 * at a given moisture the warmest store; or the reason why none does. The equation is undone by hand:
 *
 *   log10 m = (KE - CH t - CQ t^2 - log10 sigma) / CW,    CH t + CQ t^2 = KE - CW log10 m - log10 sigma,
 *
 * with sigma = days / (K0 - K1), and the answer kept inside the equation's limits: moisture from the low-moisture limit to
 * 15 %, to 14 % below freezing; temperatures from -30 to 45 C, those of stores that somebody may have.
 */
import { HIGH_MOISTURE_LIMIT_PERCENT, SAFE_FREEZING_MOISTURE_PERCENT } from './equation-limits';
import { lowMoistureLimitPercent } from './low-moisture-limit';
import type { SeedKind } from './seed-kind';
import { probitsToLose, storageLife, type ViabilityFall } from './storage-life';
import { type LongevityConstants, sigmaDays } from './viability-equation';
import { yearsInWords } from './years-in-words';

/** The coldest and the warmest store that is asked about, degrees C. Our own choice. */
export const COLDEST_STORE_C = -30;
export const WARMEST_STORE_C = 45;

/** Viability wanted after some days: proportions in (0, 1), the wanted one below the initial one; days > 0. */
export interface StorageGoal extends ViabilityFall {
  days: number;
}

export type Reach<Answer> =
  | ({ ok: true; isAtLimit: boolean } & Answer)
  /** `bestDays`: how long the goal's viability holds in the best conditions within the limits; null where nothing is forecast */
  | { ok: false; reason: string; bestDays: number | null };

/**
 * The moistest seed that reaches the goal at a temperature; all drier seed reaches it too.
 *
 * @param seed          constants with their range, storage behaviour and oil; CW, CH and CQ not negative
 * @param temperatureC  degrees C, -273.15 to 150
 * @param goal          viability wanted after some days
 * @returns percent of fresh weight; `isAtLimit` where even the moistest seed the equation is used for reaches it; or the
 *          reason why no moisture does
 * @throws RangeError when an argument is outside its range
 * @see Ellis & Roberts (1980), Ann. Bot. 45:13-30 (form: from memory)
 * Checked against R `uniroot`: tests/golden/storage-goal.json
 */
export function moistestThatReaches(
  seed: SeedKind,
  temperatureC: number,
  goal: StorageGoal,
): Reach<{ moisturePercent: number }> {
  const sigmaWanted = paceWanted('moistestThatReaches', seed.constants, goal);
  const driest = lowMoistureLimitPercent(seed);
  const moistest = temperatureC < 0 ? SAFE_FREEZING_MOISTURE_PERCENT : HIGH_MOISTURE_LIMIT_PERCENT;
  const best = storageLife(seed, { moisturePercent: driest, temperatureC }, goal);
  if (!best.ok) return { ...best, bestDays: null };
  if (best.daysPerProbit < sigmaWanted) {
    return {
      ok: false,
      reason: `No moisture reaches it at ${degrees(temperatureC)}: drying below ${percent(driest)} gains nothing more, and there it takes ${yearsInWords(best.days)}.`,
      bestDays: best.days,
    };
  }
  const atMoistest = sigmaDays(seed.constants, { moisturePercent: moistest, temperatureC });
  if (atMoistest >= sigmaWanted) return { ok: true, moisturePercent: moistest, isAtLimit: true };
  // sigma falls as m^-CW, so that one ratio leads from the driest seed to the moistest that will do.
  const moisturePercent = driest * (best.daysPerProbit / sigmaWanted) ** (1 / seed.constants.CW);
  return { ok: true, moisturePercent: Math.min(Math.max(moisturePercent, driest), moistest), isAtLimit: false };
}

/**
 * The warmest store that reaches the goal at a moisture.
 *
 * @param seed             constants with their range, storage behaviour and oil; CW, CH and CQ not negative
 * @param moisturePercent  percent of fresh weight, 0 < m < 100
 * @param goal             viability wanted after some days
 * @returns degrees C; `isAtLimit` where even 45 C reaches it; or the reason why no store does
 * @throws RangeError when an argument is outside its range
 * @see Ellis & Roberts (1980), Ann. Bot. 45:13-30 (form: from memory)
 * Checked against R `uniroot`: tests/golden/storage-goal.json
 */
export function warmestThatReaches(
  seed: SeedKind,
  moisturePercent: number,
  goal: StorageGoal,
): Reach<{ temperatureC: number }> {
  const sigmaWanted = paceWanted('warmestThatReaches', seed.constants, goal);
  const { CH, CQ } = seed.constants;
  const coldest = moisturePercent > SAFE_FREEZING_MOISTURE_PERCENT ? 0 : COLDEST_STORE_C;
  // With CQ t^2 the equation turns round in great cold: colder than its turning point is never better.
  const bestTemperatureC = CQ > 0 ? Math.max(coldest, -CH / (2 * CQ)) : coldest;
  const best = storageLife(seed, { moisturePercent, temperatureC: bestTemperatureC }, goal);
  if (!best.ok) return { ...best, bestDays: null };
  if (best.daysPerProbit < sigmaWanted) {
    const frozen =
      coldest === 0 ? `, and freezing can kill seed above ${SAFE_FREEZING_MOISTURE_PERCENT} % moisture` : '';
    return {
      ok: false,
      reason: `No store reaches it at ${percent(moisturePercent)} moisture: at ${degrees(bestTemperatureC)} it takes ${yearsInWords(best.days)}${frozen}.`,
      bestDays: best.days,
    };
  }
  const condition = { moisturePercent: best.moistureUsedPercent, temperatureC: WARMEST_STORE_C };
  if (sigmaDays(seed.constants, condition) >= sigmaWanted) {
    return { ok: true, temperatureC: WARMEST_STORE_C, isAtLimit: true };
  }
  // Solved as a step up from the best temperature b: CQ s^2 + (CH + 2 CQ b) s = log10(sigma there / sigma wanted). The form
  // with the root below the line keeps its digits where CQ is small, and holds at CQ = 0.
  const room = Math.log10(best.daysPerProbit / sigmaWanted);
  const slope = CH + 2 * CQ * bestTemperatureC;
  const step = room === 0 ? 0 : (2 * room) / (slope + Math.sqrt(slope * slope + 4 * CQ * room));
  return { ok: true, temperatureC: Math.min(bestTemperatureC + step, WARMEST_STORE_C), isAtLimit: false };
}

/** Days per probit that the goal asks for. */
function paceWanted(caller: string, { CW, CH, CQ }: LongevityConstants, goal: StorageGoal): number {
  for (const [name, value] of Object.entries({ CW, CH, CQ })) {
    if (!(value >= 0)) throw new RangeError(`${caller}: ${name} must not be negative, got ${value}`);
  }
  if (!(goal.days > 0 && Number.isFinite(goal.days))) {
    throw new RangeError(`${caller}: days must be finite and above 0, got ${goal.days}`);
  }
  const probits = probitsToLose(goal);
  if (probits === 0) {
    throw new RangeError(`${caller}: wantedViability must be below initialViability, got ${goal.wantedViability}`);
  }
  return goal.days / probits;
}

const percent = (value: number): string => `${Math.round(value * 10) / 10} %`;
const degrees = (value: number): string => `${Math.round(value * 10) / 10} °C`.replace('-', '\u2212');
