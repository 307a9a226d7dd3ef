/** Moisture and drying: what the forms of its calculator are asked. Moistures and humidities in percent, as typed. */
import { z } from 'zod';
import { moisturePercent, numberBetween, optionalField, positiveWeightG, textUpTo } from '../field-schemas';
import { CROP_OR_OIL, cropName, oilPercent, oilRange } from './crop-oil';
import { allOrNone } from './parts-agree';
import { balanceStepG, oneOf } from './question-parts';
import { readWeighings } from './weighings';
import { readWith } from './written-lines';

/** grams; a dish that was tared away weighs nothing */
const dishG = numberBetween({ min: 0, max: 10_000 }, 'g');
const humidity = numberBetween({ min: 0, max: 100 }, '%');
const temperature = numberBetween({ min: -60, max: 80 }, '°C');

/** The oven test: three weights of one sample, perhaps of a second, perhaps pre-dried. */
export const ovenSchema = z
  .object({
    ovenCrop: cropName,
    dishA: dishG,
    freshA: positiveWeightG,
    dryA: positiveWeightG,
    dishB: optionalField(dishG),
    freshB: optionalField(positiveWeightG),
    dryB: optionalField(positiveWeightG),
    /** seed alone, before and after pre-drying */
    wetBefore: optionalField(positiveWeightG),
    wetAfter: optionalField(positiveWeightG),
    ovenStep: balanceStepG,
  })
  .refine(({ dishA, freshA }) => freshA > dishA, { path: ['freshA'], message: 'This must be heavier than the dish.' })
  .refine(({ dishA, dryA }) => dryA > dishA, { path: ['dryA'], message: 'This must be heavier than the dish.' })
  .refine(({ dryA, freshA }) => dryA <= freshA, { path: ['dryA'], message: 'Dried seed cannot be heavier than fresh.' })
  .refine(({ dishB, freshB, dryB }) => allOrNone(dishB, freshB, dryB), {
    path: ['dishB'],
    message: 'Fill in all three weights of the second sample, or none.',
  })
  .refine(({ dishB, freshB }) => !(dishB !== undefined && freshB !== undefined && freshB <= dishB), {
    path: ['freshB'],
    message: 'This must be heavier than the dish.',
  })
  .refine(({ dishB, dryB }) => !(dishB !== undefined && dryB !== undefined && dryB <= dishB), {
    path: ['dryB'],
    message: 'This must be heavier than the dish.',
  })
  .refine(({ freshB, dryB }) => !(freshB !== undefined && dryB !== undefined && dryB > freshB), {
    path: ['dryB'],
    message: 'Dried seed cannot be heavier than fresh.',
  })
  .refine(({ wetBefore, wetAfter }) => allOrNone(wetBefore, wetAfter), {
    path: ['wetAfter'],
    message: 'Fill in both weights of the pre-drying, or none.',
  })
  .refine(({ wetBefore, wetAfter }) => !(wetBefore !== undefined && wetAfter !== undefined && wetAfter > wetBefore), {
    path: ['wetAfter'],
    message: 'Pre-dried seed cannot be heavier than before.',
  });

const BASES = ['fresh', 'dry'] as const;

/** One moisture said the other way. Of dry weight it may pass 100. */
export const basisSchema = z
  .object({
    basisMoisture: numberBetween({ min: 0, max: 500 }, '%'),
    basis: oneOf(BASES),
  })
  .refine(({ basisMoisture, basis }) => basis === 'dry' || basisMoisture < 100, {
    path: ['basisMoisture'],
    message: 'Of fresh weight it must be under 100 %: seed is not all water.',
  });

/** Where seed settles in this air. */
export const reachSchema = z
  .object({ reachHumidity: humidity, reachTemperature: temperature, reachCrop: cropName, reachOil: oilPercent })
  .refine(({ reachCrop, reachOil }) => oilRange(reachCrop, reachOil) !== null, {
    path: ['reachCrop'],
    message: CROP_OR_OIL,
  });

/** What air brings seed to a moisture: the humidity at a temperature, the temperature at a humidity, or both. */
export const airSchema = z
  .object({
    airMoisture: moisturePercent,
    airCrop: cropName,
    airOil: oilPercent,
    airTemperature: optionalField(temperature),
    airHumidity: optionalField(numberBetween({ min: 1, max: 100 }, '%')),
  })
  .refine(({ airCrop, airOil }) => oilRange(airCrop, airOil) !== null, { path: ['airCrop'], message: CROP_OR_OIL })
  .refine(({ airTemperature, airHumidity }) => airTemperature !== undefined || airHumidity !== undefined, {
    path: ['airTemperature'],
    message: 'Write the temperature of the room, its humidity, or both.',
  });

/** What seed weighs when it is dry enough. */
export const targetSchema = z.object({
  targetGrams: positiveWeightG,
  targetFrom: moisturePercent,
  targetTo: moisturePercent,
});

const weighings = textUpTo(10_000).transform(readWith(readWeighings));

/** How drying goes on. */
export const progressSchema = z
  .object({
    weighings,
    progressFrom: moisturePercent,
    progressTo: moisturePercent,
    progressStep: balanceStepG,
    /** where the drying air brings the seed, where that is known */
    progressSettles: optionalField(moisturePercent),
  })
  .refine(({ progressFrom, progressTo }) => progressTo < progressFrom, {
    path: ['progressTo'],
    message: 'Write less than it began with.',
  });
