/**
 * What may be recorded of a moisture test: the lot, the day, how it was found, and the figures that way gives. A
 * correction is a whole new test that names the one it corrects; the old one stays as it was written.
 */
import { z } from 'zod';
import { MOISTURE_METHOD_KEYS, moistureMethod } from '../domain/moisture/moisture-methods';
import { numberReadings } from '../domain/spreadsheet/number-format';
import { choice, tickBox } from './choice-field';
import {
  blankToUndefined,
  formNumber,
  longText,
  lotNumber,
  moisturePercent,
  numberBetween,
  optionalField,
  pastOrTodayDate,
  positiveSeedCount,
  positiveWeightG,
  shortText,
} from './field-schemas';
import { AMOUNT_UNITS } from './seed-amount';

/** grams on the bench balance; a dish with its lid weighs tens of grams, never a kilogram */
const DISH_G = { min: 0, max: 999 } as const;
/** percent; the equilibrium equation is not used above 95, and nobody's air is below 1 */
const AIR_HUMIDITY_PERCENT = { min: 1, max: 95 } as const;
/** degrees C of the air over the seed */
const AIR_TEMPERATURE_C = { min: -40, max: 60 } as const;
export const OVEN_DISHES = { min: 2, max: 8 } as const;

/** '20,114' could be twenty thousand anywhere else; on a dish only 20.114 g makes sense. */
function onlyReadingOfDish(value: unknown): unknown {
  if (typeof value !== 'string') return value;
  const sensible = numberReadings(value.trim()).filter(
    (reading) => (reading.unit === null || reading.unit === 'g') && reading.value <= DISH_G.max,
  );
  return sensible.length === 1 ? sensible[0]?.value : value;
}

const grams = z.preprocess(onlyReadingOfDish, numberBetween(DISH_G, 'g'));
const recordId = z.string().max(64, 'This does not name anything in the collection.');

/** One dish: the three weights of the oven, and the two of pre-drying where there was one. */
const dishRow = z
  .object({
    dishG: grams,
    dishAndFreshG: grams,
    dishAndDryG: grams,
    beforePreDryingG: optionalField(positiveWeightG),
    afterPreDryingG: optionalField(positiveWeightG),
  })
  .transform((dish, context) => {
    const refuse = (field: keyof typeof dish, message: string) =>
      context.addIssue({ code: 'custom', path: [field], message });
    const { beforePreDryingG = null, afterPreDryingG = null } = dish;
    if (dish.dishAndFreshG <= dish.dishG) {
      refuse('dishAndFreshG', 'With seed in it the dish weighs more than empty: check both.');
    } else if (dish.dishAndDryG > dish.dishAndFreshG) {
      refuse('dishAndDryG', 'Dried seed cannot weigh more than fresh: check both.');
    } else if (dish.dishAndDryG <= dish.dishG) {
      refuse('dishAndDryG', 'This is not more than the empty dish weighs: check both.');
    }
    if ((beforePreDryingG === null) !== (afterPreDryingG === null)) {
      refuse(
        beforePreDryingG === null ? 'beforePreDryingG' : 'afterPreDryingG',
        'Write both weights of the pre-drying, or neither.',
      );
    } else if (beforePreDryingG !== null && afterPreDryingG !== null && afterPreDryingG > beforePreDryingG) {
      refuse('afterPreDryingG', 'Pre-drying cannot make seed heavier: check both.');
    }
    return { ...dish, beforePreDryingG, afterPreDryingG };
  });

/** A dish of the form in which nothing was written is no dish. */
function blankDishToUndefined(row: unknown): unknown {
  if (typeof row !== 'object' || row === null) return blankToUndefined(row);
  return Object.values(row).every((value) => blankToUndefined(value) === undefined) ? undefined : row;
}

const dishes = z
  .preprocess(
    // The form's dishes arrive as an array with holes where a row was left out.
    (rows) => (Array.isArray(rows) ? Array.from(rows) : rows),
    z.array(z.preprocess(blankDishToUndefined, dishRow.optional())).max(OVEN_DISHES.max).optional(),
  )
  .transform((rows) => (rows ?? []).filter((row) => row !== undefined));

/**
 * Input of a moisture test, as a form or a program sends it.
 *
 * @param today  'YYYY-MM-DD' at the bank; the test may not lie after it
 * @returns a schema. Only the figures of the method chosen come through: dishes of an oven, the percent of a meter,
 *          humidity (0-1) and temperature of the air. Messages about a dish stand at 'dishes.<row>.<weight>'
 * @throws RangeError when today is not a calendar date
 * Checked in tests/schemas/moisture-test.test.ts
 */
export const moistureTestInput = (today: string) =>
  z
    .object({
      lot: lotNumber,
      packetId: optionalField(recordId),
      testedOn: pastOrTodayDate(today),
      method: choice(MOISTURE_METHOD_KEYS, 'method'),
      moisturePercent: optionalField(moisturePercent),
      humidityPercent: optionalField(numberBetween(AIR_HUMIDITY_PERCENT, '%')),
      temperatureC: optionalField(numberBetween(AIR_TEMPERATURE_C, '°C')),
      dishes,
      /** whether the seed that was used is to be taken out of that packet's ledger */
      takeSeed: tickBox,
      /** left empty: what was put into the oven */
      amount: z.preprocess((value) => formNumber(value), z.unknown()),
      unit: optionalField(choice(AMOUNT_UNITS, 'unit')),
      notes: optionalField(longText),
      correctsId: optionalField(recordId),
      correctionReason: optionalField(shortText),
    })
    .transform(({ moisturePercent, humidityPercent, temperatureC, dishes, amount, unit, ...test }, context) => {
      const refuse = (field: string, message: string) => context.addIssue({ code: 'custom', path: [field], message });
      const { oven } = moistureMethod(test.method);
      const found = {
        dishes: oven ? dishes : [],
        moisturePercent: test.method === 'meter' ? moisturePercent : undefined,
        air:
          test.method === 'air' && humidityPercent !== undefined && temperatureC !== undefined
            ? { relativeHumidity: humidityPercent / 100, temperatureC }
            : undefined,
      };
      if (oven && dishes.length < OVEN_DISHES.min) {
        refuse(
          `dishes.${dishes.length}.dishG`,
          'Two dishes at the least: one alone does not show whether to believe it.',
        );
      }
      if (test.method === 'meter' && moisturePercent === undefined) {
        refuse('moisturePercent', 'Write what the meter shows.');
      }
      if (test.method === 'air' && humidityPercent === undefined) {
        refuse('humidityPercent', 'Write the humidity of the air over the seed.');
      }
      if (test.method === 'air' && temperatureC === undefined) {
        refuse('temperatureC', 'Write the temperature at which it was read.');
      }
      if (test.correctsId && !test.correctionReason) {
        refuse('correctionReason', 'Say what was wrong with the test as first written.');
      }
      const takes = test.takeSeed && !test.correctsId;
      if (takes && !test.packetId) refuse('packetId', 'Choose the packet from which the seed was taken.');
      return { ...test, ...found, used: takes ? usedSeed(amount, unit, found.dishes, refuse) : null };
    });

export type MoistureTestInput = z.output<ReturnType<typeof moistureTestInput>>;

type Dish = z.output<typeof dishRow>;

/** What left the packet: as written, or else the fresh seed of the dishes (of the pre-drying, where there was one). */
function usedSeed(
  amount: unknown,
  unit: (typeof AMOUNT_UNITS)[number] | undefined,
  ovenDishes: readonly Dish[],
  refuse: (field: string, message: string) => void,
): { amount: number; unit: (typeof AMOUNT_UNITS)[number] } | null {
  if (amount === undefined) {
    if (ovenDishes.length === 0) {
      refuse('amount', 'Write how much seed was used up.');
      return null;
    }
    const fresh = ovenDishes.reduce((sum, dish) => sum + (dish.beforePreDryingG ?? dish.dishAndFreshG - dish.dishG), 0);
    return { amount: Number(fresh.toFixed(4)), unit: 'grams' };
  }
  const checked = (unit === 'seeds' ? positiveSeedCount : positiveWeightG).safeParse(amount);
  if (checked.success) return { amount: checked.data, unit: unit ?? 'grams' };
  refuse('amount', checked.error.issues[0]?.message ?? 'Write a number.');
  return null;
}
