/** What the address of a store's climate says: which days, and how far from its target counts as outside. */
import { z } from 'zod';
import { calendarDate, numberBetween, optionalField } from './field-schemas';

const first = (value: unknown) => (Array.isArray(value) ? value[0] : value);

export const climateQuerySchema = z
  .object({
    from: z.preprocess(first, optionalField(calendarDate)),
    to: z.preprocess(first, optionalField(calendarDate)),
    /** degrees C, either way */
    tolerance: z.preprocess(first, optionalField(numberBetween({ min: 0.1, max: 20 }, '°C'))),
    /** points of relative humidity, either way */
    humidity: z.preprocess(first, optionalField(numberBetween({ min: 1, max: 50 }, '%'))),
  })
  .refine(({ from, to }) => from === undefined || to === undefined || from <= to, {
    path: ['to'],
    error: 'Write a last day that is not before the first.',
  });

export type ClimateQuery = z.infer<typeof climateQuerySchema>;
