import { z } from 'zod';
import { countBetween, optionalField } from '../field-schemas';
import { SEED_COUNT } from '../limits';

export const INTERVAL_LEVELS = ['80', '90', '95', '99'] as const;

/** How sure is a germination figure: what its calculator is asked. */
export const germinationIntervalSchema = z
  .object({
    germinated: countBetween({ min: 0, max: SEED_COUNT.max }, 'seeds'),
    seeds: countBetween({ min: 1, max: SEED_COUNT.max }, 'seeds'),
    level: optionalField(z.enum(INTERVAL_LEVELS, 'Choose one of the list.')),
  })
  .refine(({ germinated, seeds }) => germinated <= seeds, {
    path: ['germinated'],
    message: 'More seeds grew than were set: check both.',
  });
