import { z } from 'zod';
import { countBetween, numberBetween, optionalField } from '../field-schemas';
import { assurancePercent } from './question-parts';

/** How many flowers to bag: what its calculator is asked. Shares in percent, as typed. */
export const flowersToBagQuestion = z.object({
  seeds: countBetween({ min: 1, max: 100_000 }, 'seeds'),
  plants: countBetween({ min: 1, max: 1000 }, 'plants'),
  success: numberBetween({ min: 1, max: 100 }, '%'),
  seedsPerFruit: numberBetween({ min: 0.1, max: 5000 }, ''),
  seedsPerFruitSd: optionalField(numberBetween({ min: 0, max: 5000 }, '')),
  assurance: assurancePercent,
});
