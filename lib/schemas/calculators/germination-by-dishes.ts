import { z } from 'zod';
import { countBetween, numberBetween, optionalField, positiveSeedCount, seedCount } from '../field-schemas';
import { REPLICATE_COUNT, SEED_COUNT } from '../limits';
import { numberList } from '../number-list';
import { refuse, refuseHalfTest } from './parts-agree';

/** What a dish holds, and what its interval can be worked out for while a page waits. */
const MOST_SEEDS_A_DISH = 1000;

/** How sure is a germination figure, from the count of every dish: what its calculator is asked. Minimum in percent. */
export const germinationByDishesSchema = z
  .object({
    dishes: numberList({ min: 0, max: SEED_COUNT.max, most: REPLICATE_COUNT.max }, 'counts', true),
    seedsADish: countBetween({ min: 1, max: MOST_SEEDS_A_DISH }, 'seeds'),
    alike: optionalField(numberBetween({ min: 0, max: 1 }, '')),
    minimum: optionalField(numberBetween({ min: 1, max: 100 }, '%')),
    otherGrew: optionalField(seedCount),
    otherSeeds: optionalField(positiveSeedCount),
  })
  .superRefine(({ dishes, seedsADish, otherGrew, otherSeeds }, context) => {
    const most = Math.max(...dishes);
    if (most > seedsADish) refuse(context, 'dishes', `${most} grew in a dish of ${seedsADish} seeds: check both.`);
    refuseHalfTest(context, {
      grew: { field: 'otherGrew', count: otherGrew },
      set: { field: 'otherSeeds', count: otherSeeds },
      test: 'the other test',
    });
  });
