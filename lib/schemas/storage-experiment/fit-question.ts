/** What the page of a storage experiment is asked by its address. */
import { z } from 'zod';
import { TEMPERATURE_COEFFICIENTS } from '../../domain/longevity/storage-experiment/experiment-fit';
import { choice } from '../choice-field';
import { moisturePercent, numberBetween, optionalField } from '../field-schemas';

export const fitQuestionSchema = z.object({
  /** CH and CQ held at the common ones, or fitted too */
  coefficients: optionalField(choice(TEMPERATURE_COEFFICIENTS, 'temperature coefficients')),
  /** the condition to speak of: percent of fresh weight and degrees C */
  moisture: optionalField(moisturePercent),
  temperature: optionalField(numberBetween({ min: -196, max: 100 }, '°C')),
});
