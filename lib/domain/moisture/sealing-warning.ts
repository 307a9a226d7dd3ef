/**
 * Words for whoever is about to seal seed that is too moist for its store. A sealed container keeps what is put in: moist
 * seed stays moist for years. Never a ban: the steward may have reasons.
 */
import { HIGH_MOISTURE_LIMIT_PERCENT } from '../longevity/equation-limits';
import type { SeedKind } from '../longevity/seed-kind';
import { type StorageLife, storageLife } from '../longevity/storage-life';
import { yearsInWords } from '../longevity/years-in-words';
import { isHermetic } from '../stock/containers';
import { dryingTarget } from './drying-target';

/** Moister seed is not sealed for long, whatever the crop and however cold the store. Status: common practice. */
export const SEALING_LIMIT_PERCENT = 9;
/** Seed that keeps less than this, and would keep twice as long when dried, is worth drying. Our own choice. */
export const SHORT_LIFE_YEARS = 3;
const WORTHWHILE_GAIN = 2;
const DAYS_PER_YEAR = 365.25;
/** Most fresh lots begin about here (priors.ts), and are due for regrowing at 85 % of it (threshold.ts). */
const USUAL_FALL = { initialViability: 0.96, wantedViability: 0.96 * 0.85 } as const;

/**
 * A warning for seed about to be sealed too moist, or null.
 *
 * @param moisturePercent  of the seed, percent of fresh weight, 0 < m < 100
 * @param temperatureC     the store's target, degrees C
 * @param container        a key of lib/domain/stock/containers
 * @param seed             the crop's constants, oil and storage behaviour; null where none are chosen
 * @returns plain sentences with how long it keeps by the viability equation and what drying would gain, or null: the
 *          container is open, or the seed is dry enough
 * @throws RangeError when moisture or temperature is outside its range or the container is unknown
 * @see 9 %: common practice; 15 %: equation-limits.ts; 3 years and the doubling are our own choice
 * Checked on both sides of every limit, and its years against R: tests/domain/moisture/sealing-warning.test.ts
 */
export function sealingWarning({
  moisturePercent,
  temperatureC,
  container,
  seed,
}: {
  moisturePercent: number;
  temperatureC: number;
  container: string;
  seed: SeedKind | null;
}): string | null {
  if (!(moisturePercent > 0 && moisturePercent < 100)) {
    throw new RangeError(`sealingWarning: moisturePercent must be in (0, 100), got ${moisturePercent}`);
  }
  if (!isHermetic(container)) return null;
  if (seed?.storageBehaviour === 'recalcitrant') {
    return 'Seed of this crop dies when dried, and sealed moist it suffocates: do not seal it.';
  }
  const target = seed && dryingTarget(seed);
  const dryTo = target?.ok ? `dry it to about ${percent(target.moisturePercent)} first.` : 'dry it first.';
  if (moisturePercent > HIGH_MOISTURE_LIMIT_PERCENT) {
    return `At ${percent(moisturePercent)} moisture sealed seed heats, moulds and suffocates, and no forecast holds: ${dryTo}`;
  }
  const life = seed && storageLife(seed, { moisturePercent, temperatureC }, USUAL_FALL);
  const driedLife =
    seed && target?.ok
      ? storageLife(seed, { moisturePercent: target.moisturePercent, temperatureC }, USUAL_FALL)
      : null;
  if (moisturePercent <= SEALING_LIMIT_PERCENT && !isShort(life, driedLife)) return null;
  const rule =
    moisturePercent > SEALING_LIMIT_PERCENT
      ? `${percent(moisturePercent)} is too moist to seal for long (${SEALING_LIMIT_PERCENT} % at most by common practice): ${dryTo}`
      : `Sealed at ${percent(moisturePercent)} it will not keep long here: ${dryTo}`;
  if (!life?.ok || !driedLife?.ok || !target?.ok) return rule;
  return `${rule} By the equation it falls to 85 % of a usual beginning in ${yearsInWords(life.days)} at ${degrees(temperatureC)}; dried to ${percent(target.moisturePercent)}, in ${yearsInWords(driedLife.days)}.`;
}

function isShort(life: StorageLife | null, driedLife: StorageLife | null): boolean {
  if (!life?.ok || !driedLife?.ok) return false;
  return life.days < SHORT_LIFE_YEARS * DAYS_PER_YEAR && driedLife.days >= WORTHWHILE_GAIN * life.days;
}

const percent = (value: number): string => `${Math.round(value * 10) / 10} %`;
const degrees = (value: number): string => `${Math.round(value * 10) / 10} °C`.replace('-', '−');
