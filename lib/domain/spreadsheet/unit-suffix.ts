/**
 * Units that stewards write behind a number, brought to the unit that the product keeps. A unit that is not known is
 * refused rather than dropped: '2 kg' read as 2 g would be a thousandfold mistake.
 */

export type Quantity = 'grams' | 'percent' | 'seeds' | 'plants' | 'number';

// Ounce and pound: international avoirdupois, exact by definition.
const FACTORS: Record<Quantity, Record<string, number>> = {
  grams: {
    ...{ g: 1, gr: 1, gm: 1, gms: 1, gram: 1, grams: 1, gramm: 1, gramme: 1, grammes: 1, gramo: 1, gramos: 1 },
    ...{ mg: 0.001, kg: 1000, kilo: 1000, kilos: 1000, oz: 28.349523125, lb: 453.59237, lbs: 453.59237 },
  },
  percent: { '%': 1, percent: 1, pct: 1, 'per cent': 1, prozent: 1, '‰': 0.1 },
  seeds: {
    ...{ seed: 1, seeds: 1, sd: 1, sds: 1, pcs: 1, stk: 1, stück: 1, korn: 1, körner: 1, samen: 1 },
    ...{ graine: 1, graines: 1, semilla: 1, semillas: 1 },
  },
  plants: { plant: 1, plants: 1, pl: 1, pflanze: 1, pflanzen: 1, plante: 1, plantes: 1, planta: 1, plantas: 1 },
  number: {},
};

/**
 * Turns a number with the unit written behind it into the unit kept.
 *
 * @param value     the number as read
 * @param unit      the text behind it, or null when there was none (then it is already in the unit kept)
 * @param quantity  what the column holds: grams, percent, seeds, plants, or a bare number
 * @returns the value in grams, percent or pieces; { ok: false } when the unit does not belong to that quantity
 * Checked in tests/domain/spreadsheet/unit-suffix.test.ts
 */
export function toKeptUnit(
  value: number,
  unit: string | null,
  quantity: Quantity,
): { ok: true; value: number } | { ok: false; reason: 'unknown-unit' } {
  if (unit === null) return { ok: true, value };
  const name = unit.toLowerCase().replace(/\.$/, '');
  const factors = FACTORS[quantity];
  const factor = Object.hasOwn(factors, name) ? factors[name] : undefined;
  if (factor === undefined) return { ok: false, reason: 'unknown-unit' };
  // Dividing keeps 250 mg at 0.25 g; multiplying by 0.001 would leave a rounding tail.
  return { ok: true, value: factor < 1 ? value / Math.round(1 / factor) : value * factor };
}
