import { z } from 'zod';
import { moisturePercent, numberBetween, optionalField } from './field-schemas';

/** What if the seed lay elsewhere: another store, or another temperature, and another moisture. In the lot's address. */
export const whatIfSchema = z.object({
  store: optionalField(z.string().max(60)),
  temperature: optionalField(numberBetween({ min: -30, max: 45 }, '°C')),
  moisture: optionalField(moisturePercent),
});

export type WhatIf = z.infer<typeof whatIfSchema>;
