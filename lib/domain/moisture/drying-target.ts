/**
 * How dry seed should be before it is sealed: at rest in air of 15 % relative humidity at 15 °C, never below the
 * moisture at which drying stops to help.
 *
 * Status: the genebank standard dries at 5-20 °C in air of 10-25 % and keeps at 15 +- 3 % (FAO 2014, 4.2.1 and 4.2.3:
 * published); 15 % at 15 °C out of that span is our own choice. The equilibrium equation is from memory.
 */
import { lowMoistureLimitPercent } from '../longevity/low-moisture-limit';
import type { SeedKind } from '../longevity/seed-kind';
import { equilibriumMoisture } from './equilibrium';

export const DRYING_AIR = { relativeHumidity: 0.15, temperatureC: 15 } as const;

export type DryingTarget =
  | {
      ok: true;
      /** percent of fresh weight, rounded to a tenth */
      moisturePercent: number;
      /** where drying further no longer lengthens life, percent of fresh weight */
      lowestPercent: number;
    }
  | { ok: false; reason: string };

/**
 * The moisture to dry a crop's seed to.
 *
 * @param seed  oil, low-moisture limit and storage behaviour of the crop
 * @returns the target, or why there is none: seed that dies when dried, or bears it only in part
 * @throws RangeError when the oil is outside 0-0.8
 * @see FAO 2014, Genebank Standards 4.2.1 and 4.2.3, as quoted in the facts sheet; equation from memory (equilibrium.ts)
 * Checked against R's arithmetic of the equation: tests/domain/moisture/drying-target.test.ts
 */
export function dryingTarget(
  seed: Pick<SeedKind, 'constantsRange' | 'oilFraction' | 'storageBehaviour'>,
): DryingTarget {
  if (seed.storageBehaviour === 'recalcitrant') {
    return { ok: false, reason: 'Seed of this crop dies when dried: do not dry it.' };
  }
  if (seed.storageBehaviour === 'intermediate') {
    return {
      ok: false,
      reason: 'Seed of this crop bears drying only in part: ask somebody who keeps it how far to go.',
    };
  }
  const lowestPercent = lowMoistureLimitPercent(seed);
  const atRest = equilibriumMoisture({ ...DRYING_AIR, oilFraction: seed.oilFraction });
  return { ok: true, moisturePercent: Math.round(Math.max(atRest, lowestPercent) * 10) / 10, lowestPercent };
}
