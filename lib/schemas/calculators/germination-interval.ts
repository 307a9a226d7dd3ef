import { z } from 'zod';
import { optionalField, positiveSeedCount, seedCount } from '../field-schemas';
import { MORE_THAN_SET } from './parts-agree';
import { level } from './question-parts';

/** How sure is a germination figure: what its calculator is asked. */
export const germinationIntervalSchema = z
  .object({
    germinated: seedCount,
    seeds: positiveSeedCount,
    level: optionalField(level),
  })
  .refine(({ germinated, seeds }) => germinated <= seeds, {
    path: ['germinated'],
    message: MORE_THAN_SET,
  });
