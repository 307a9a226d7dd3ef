/**
 * Where the viability equation may be used, and what to say where it may not.
 *
 * - Below a low-moisture limit further drying no longer lengthens life, so moisture is held at the limit.
 *   A species without its own limit gets the moisture in equilibrium with about 10.6 % relative humidity
 *   (Ellis, Hong & Roberts 1989, Ann. Bot. 63:601-611: twelve species, 2.4 % to 6.2 %); the caller works
 *   that out from the species' oil and passes it in.
 * - Above about 15 % moisture the pattern changes (seen for lettuce, J. Exp. Bot. 34, 1983): no forecast.
 * - Seed that dies when dried (recalcitrant) does not follow the equation at all: no forecast.
 */
import type { StorageBehaviour } from '../reference/crop-facts';
import { LOW_MOISTURE_LIMIT_RELATIVE_HUMIDITY } from '../reference/low-moisture-limits';

/** Moisture above which the equation is not used, percent of fresh weight. */
export const HIGH_MOISTURE_LIMIT_PERCENT = 15;
/** Moisture above which freezing may kill seed, percent of fresh weight (a university seed-storage course text). */
export const SAFE_FREEZING_MOISTURE_PERCENT = 14;
/** Relative humidity (0-1) whose equilibrium moisture is the low-moisture limit when a species has none of its own. */
export const LOW_LIMIT_RELATIVE_HUMIDITY = LOW_MOISTURE_LIMIT_RELATIVE_HUMIDITY.value;

/** The conditions in which a species' constants were fitted; leave out what is not known. */
export type ConstantsRange = {
  moistureFromPercent?: number;
  moistureToPercent?: number;
  temperatureFromC?: number;
  temperatureToC?: number;
  /** percent of fresh weight below which drying no longer helps */
  lowMoistureLimitPercent?: number;
};

export type EffectiveConditions =
  | {
      ok: true;
      /** percent of fresh weight to put into the equation: held at the low-moisture limit */
      moisturePercent: number;
      temperatureC: number;
      heldAtLowLimit: boolean;
      /** outside the fitted range, or the range is not known */
      outsideFittedRange: boolean;
      /** plain sentences to show beside the forecast */
      notes: string[];
    }
  | { ok: false; reason: string };

/**
 * The conditions to put into the viability equation, or the reason why it gives no forecast here.
 *
 * @param constantsRange    where the constants were fitted, and the low-moisture limit (percent of fresh weight)
 * @param storageBehaviour  how the species bears drying; default 'unknown'
 * @param moisturePercent   the seed's moisture, percent of fresh weight, 0 < m < 100
 * @param temperatureC      degrees C, -273.15 to 150
 * @returns the moisture and temperature to use with plain notes, or `{ ok: false, reason }`
 * @throws RangeError when moisture or temperature is outside the range above
 * @see references for each limit in the header of this file
 * Checked at both sides of every limit in tests/domain/longevity/equation-limits.test.ts
 */
export function effectiveConditions({
  constantsRange,
  storageBehaviour = 'unknown',
  moisturePercent,
  temperatureC,
}: {
  constantsRange: ConstantsRange;
  storageBehaviour?: StorageBehaviour;
  moisturePercent: number;
  temperatureC: number;
}): EffectiveConditions {
  requireCondition('effectiveConditions', moisturePercent, temperatureC);
  if (storageBehaviour === 'recalcitrant') {
    return { ok: false, reason: 'Seed of this crop dies when dried, so its life in store cannot be forecast.' };
  }
  if (moisturePercent > HIGH_MOISTURE_LIMIT_PERCENT) {
    return {
      ok: false,
      reason: `At ${percent(moisturePercent)} moisture the equation does not hold (its limit is ${HIGH_MOISTURE_LIMIT_PERCENT} %): dry the seed first.`,
    };
  }
  const { lowMoistureLimitPercent: lowLimit } = constantsRange;
  const notes: string[] = [];
  const heldAtLowLimit = lowLimit !== undefined && moisturePercent < lowLimit;
  const moistureUsed = heldAtLowLimit ? lowLimit : moisturePercent;
  if (heldAtLowLimit) {
    notes.push(`Drying below ${percent(lowLimit)} no longer lengthens life: reckoned at ${percent(lowLimit)}.`);
  }
  if (storageBehaviour === 'intermediate') {
    notes.push('Seed of this crop bears drying only in part: take the forecast as a rough guide.');
  }
  const rangeNotes = fittedRangeNotes(constantsRange, moistureUsed, temperatureC);
  notes.push(...rangeNotes);
  return {
    ok: true,
    moisturePercent: moistureUsed,
    temperatureC,
    heldAtLowLimit,
    outsideFittedRange: rangeNotes.length > 0,
    notes,
  };
}

/**
 * A warning for seed that is too moist to freeze, or null where freezing is safe.
 *
 * @param moisturePercent  percent of fresh weight, 0 < m < 100
 * @param temperatureC     degrees C of the store, -273.15 to 150
 * @returns one plain sentence, or null when the store is not below freezing or the seed is at or below 14 %
 * @throws RangeError when moisture or temperature is outside the range above
 * Checked at both sides of both limits in tests/domain/longevity/equation-limits.test.ts
 */
export function freezingWarning({
  moisturePercent,
  temperatureC,
}: {
  moisturePercent: number;
  temperatureC: number;
}): string | null {
  requireCondition('freezingWarning', moisturePercent, temperatureC);
  if (temperatureC >= 0 || moisturePercent <= SAFE_FREEZING_MOISTURE_PERCENT) return null;
  return `Freezing can kill seed at ${percent(moisturePercent)} moisture: dry it to ${SAFE_FREEZING_MOISTURE_PERCENT} % or less first.`;
}

function fittedRangeNotes(range: ConstantsRange, moisturePercent: number, temperatureC: number): string[] {
  const notes: string[] = [];
  const { moistureFromPercent, moistureToPercent, temperatureFromC, temperatureToC } = range;
  if (moistureFromPercent === undefined || moistureToPercent === undefined) {
    notes.push('The moistures in which these constants were fitted are not known.');
  } else if (moisturePercent < moistureFromPercent || moisturePercent > moistureToPercent) {
    notes.push(
      `The constants were fitted from ${percent(moistureFromPercent)} to ${percent(moistureToPercent)} moisture; this seed is at ${percent(moisturePercent)}.`,
    );
  }
  if (temperatureFromC === undefined || temperatureToC === undefined) {
    notes.push('The temperatures at which these constants were fitted are not known.');
  } else if (temperatureC < temperatureFromC || temperatureC > temperatureToC) {
    notes.push(
      `The constants were fitted from ${degrees(temperatureFromC)} to ${degrees(temperatureToC)}; this store is at ${degrees(temperatureC)}.`,
    );
  }
  return notes;
}

function requireCondition(caller: string, moisturePercent: number, temperatureC: number): void {
  if (!(moisturePercent > 0 && moisturePercent < 100)) {
    throw new RangeError(`${caller}: moisturePercent must be above 0 and below 100, got ${moisturePercent}`);
  }
  if (!(temperatureC >= -273.15 && temperatureC <= 150)) {
    throw new RangeError(`${caller}: temperatureC must be between -273.15 and 150, got ${temperatureC}`);
  }
}

const percent = (value: number): string => `${Math.round(value * 10) / 10} %`;
const degrees = (value: number): string => `${Math.round(value * 10) / 10} °C`.replace('-', '\u2212');
