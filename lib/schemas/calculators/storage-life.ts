import { z } from 'zod';
import { COLDEST_STORE_C, WARMEST_STORE_C } from '../../domain/longevity/reach-goal';
import { moisturePercent, numberBetween, optionalField } from '../field-schemas';
import { allOrNone } from './parts-agree';

const id = optionalField(z.string().max(80, 'Choose one of the list.'));
const temperatureC = numberBetween({ min: COLDEST_STORE_C, max: WARMEST_STORE_C }, '°C');
// Seed that is all alive or all dead has no probit.
const viability = numberBetween({ min: 0.1, max: 99.9 }, '%').transform((percent) => percent / 100);
const years = numberBetween({ min: 0.1, max: 1000 }, 'years');

/** How long does seed keep: what its calculator is asked. Each part is sent by a form or a link; moistures in percent. */
export const storageLifeSchema = z
  .object({
    /** the crop whose seed it is */
    crop: id,
    /** constants in place of the crop's own */
    constants: id,
    moisture: moisturePercent,
    temperature: temperatureC,
    initial: viability,
    wanted: viability,
    years,
    /** a store to mark on the map */
    store: id,
    /** where it lay before: all three or none */
    beforeYears: optionalField(years),
    beforeMoisture: optionalField(moisturePercent),
    beforeTemperature: optionalField(temperatureC),
  })
  .refine(({ crop, constants }) => crop !== undefined || constants !== undefined, {
    path: ['crop'],
    message: 'Choose a crop, or constants.',
  })
  .refine(({ initial, wanted }) => wanted < initial, {
    path: ['wanted'],
    message: 'Write less than it begins with: seed in store never gains.',
  })
  .refine(
    ({ beforeYears, beforeMoisture, beforeTemperature }) => allOrNone(beforeYears, beforeMoisture, beforeTemperature),
    {
      path: ['beforeYears'],
      message: 'Fill in all three of the storage before, or none.',
    },
  );

export type StorageLifeQuestion = z.infer<typeof storageLifeSchema>;
