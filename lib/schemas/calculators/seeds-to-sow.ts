import { z } from 'zod';
import {
  countBetween,
  numberBetween,
  optionalField,
  positiveSeedCount,
  seedCount,
  thousandSeedWeightG,
} from '../field-schemas';
import { MORE_THAN_SET } from './parts-agree';
import { assurancePercent } from './question-parts';

/** How many seeds to sow: what its calculator is asked. Shares in percent, as typed. */
export const seedsToSowQuestion = z
  .object({
    plants: countBetween({ min: 1, max: 5000 }, 'plants'),
    alive: seedCount,
    tested: positiveSeedCount,
    emergence: numberBetween({ min: 1, max: 100 }, '%'),
    assurance: assurancePercent,
    thousandSeedWeight: optionalField(thousandSeedWeightG),
  })
  .refine(({ alive, tested }) => alive <= tested, {
    path: ['alive'],
    message: MORE_THAN_SET,
  });
