/** The crop whose oil a question needs, or the oil itself; shared by the moisture questions. */
import { z } from 'zod';
import { MAX_OIL_FRACTION } from '../../domain/moisture/equilibrium';
import type { OilRange } from '../../domain/moisture/settling';
import { CROPS, factSpan, getCropFacts } from '../../domain/reference/all-crops';
import { numberBetween, optionalField } from '../field-schemas';

/** Names of the reference's crops, as a list of choices shows them. */
export const CROP_NAMES = CROPS.map(({ name }) => name).sort((a, b) => a.localeCompare(b, 'en'));

export const cropName = optionalField(
  z.string().refine((name) => CROP_NAMES.includes(name), 'Choose a crop of the list.'),
);
export const oilPercent = optionalField(numberBetween({ min: 0, max: MAX_OIL_FRACTION * 100 }, '%'));

export const CROP_OR_OIL = 'Choose a crop, or write the oil of the seed.';

/**
 * The oil to work with: what was typed goes before the crop's range.
 *
 * @param crop  name of a crop of the reference, or undefined
 * @param oil   percent of the seed's dry weight, or undefined
 * @returns fractions 0-1; null when neither is given or the reference does not know the crop's oil
 * Checked in tests/schemas/moisture-and-drying.test.ts
 */
export function oilRange(crop: string | undefined, oil: number | undefined): OilRange | null {
  if (oil !== undefined) return { lower: oil / 100, upper: oil / 100 };
  const facts = crop === undefined ? undefined : getCropFacts(crop);
  const span = facts && factSpan(facts, 'oil fraction');
  return span?.ok ? { lower: span.lower, upper: span.upper } : null;
}
