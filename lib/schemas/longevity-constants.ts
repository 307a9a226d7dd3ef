import { z } from 'zod';
import { longText, numberBetween, optionalField, shortText } from './field-schemas';

/**
 * Constants of the viability equation that the bank enters itself, from a paper or a storage experiment of its own.
 * The bounds leave room around every published set; they catch slips, such as a sign or a decimal point.
 */
export const longevityConstantsSchema = z
  .object({
    name: shortText,
    species: shortText,
    KE: numberBetween({ min: 1, max: 20 }, ''),
    CW: numberBetween({ min: 0, max: 15 }, ''),
    CH: numberBetween({ min: 0, max: 0.2 }, ''),
    CQ: numberBetween({ min: 0, max: 0.005 }, ''),
    moistureFromPercent: optionalField(numberBetween({ min: 0.5, max: 60 }, '%')),
    moistureToPercent: optionalField(numberBetween({ min: 0.5, max: 60 }, '%')),
    temperatureFromC: optionalField(numberBetween({ min: -196, max: 100 }, '°C')),
    temperatureToC: optionalField(numberBetween({ min: -196, max: 100 }, '°C')),
    lowMoistureLimitPercent: optionalField(numberBetween({ min: 0.5, max: 15 }, '%')),
    source: longText,
  })
  .refine(inOrder('moistureFromPercent', 'moistureToPercent'), {
    path: ['moistureToPercent'],
    message: 'This is below the lower end: check both.',
  })
  .refine(inOrder('temperatureFromC', 'temperatureToC'), {
    path: ['temperatureToC'],
    message: 'This is below the lower end: check both.',
  });

function inOrder<Key extends string>(from: Key, to: Key) {
  return (input: Partial<Record<Key, number | undefined>>) => {
    const [low, high] = [input[from], input[to]];
    return low === undefined || high === undefined || low <= high;
  };
}
