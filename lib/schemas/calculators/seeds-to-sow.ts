import { z } from 'zod';
import { countBetween, numberBetween, optionalField, thousandSeedWeightG } from '../field-schemas';
import { SEED_COUNT } from '../limits';

/** How many seeds to sow: what its calculator is asked. Shares in percent, as typed. */
export const seedsToSowQuestion = z
  .object({
    plants: countBetween({ min: 1, max: 5000 }, 'plants'),
    alive: countBetween({ min: 0, max: SEED_COUNT.max }, 'seeds'),
    tested: countBetween({ min: 1, max: SEED_COUNT.max }, 'seeds'),
    emergence: numberBetween({ min: 1, max: 100 }, '%'),
    assurance: numberBetween({ min: 1, max: 99.9 }, '%'),
    thousandSeedWeight: optionalField(thousandSeedWeightG),
  })
  .refine(({ alive, tested }) => alive <= tested, {
    path: ['alive'],
    message: 'More seeds grew than were set: check both.',
  });
