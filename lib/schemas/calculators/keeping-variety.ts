import { z } from 'zod';
import { countBetween, numberBetween, optionalField } from '../field-schemas';
import { numberList } from '../number-list';
import { assurancePercent, oneOf } from './question-parts';

const breeding = oneOf(['crossing', 'selfing']);
/** percent of all copies of a gene */
const frequency = numberBetween({ min: 0.1, max: 50 }, '%');

/** How many plants keep a rare form. */
export const rareFormQuestion = z.object({
  plants: countBetween({ min: 1, max: 100_000 }, 'plants'),
  frequency,
  genes: optionalField(countBetween({ min: 1, max: 10_000 }, 'genes')),
  breeding,
  assurance: assurancePercent,
});

/** How many parents a seed lot really has. */
export const parentsQuestion = z.object({
  seedByPlant: numberList({ min: 0, max: 1_000_000, most: 500 }, 'amounts'),
  parentBreeding: breeding,
  pollenPlants: optionalField(countBetween({ min: 0, max: 10_000 }, 'plants')),
});

/** What many regrowings do. */
export const regrowingsQuestion = z.object({
  sizes: numberList({ min: 1, max: 100_000, most: 100 }, 'numbers of plants'),
  regrowingFrequency: frequency,
});
