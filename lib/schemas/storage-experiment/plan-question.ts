/** When to count in an experiment to come: what its page is asked by its address. */
import { z } from 'zod';
import { idOf } from '../choice-field';
import { countBetween, moisturePercent, numberBetween } from '../field-schemas';

export const planQuestionSchema = z.object({
  constants: idOf('longevity constants'),
  moisture: moisturePercent,
  temperature: numberBetween({ min: -30, max: 70 }, '°C'),
  /** typed as percent, kept as a share */
  germination: numberBetween({ min: 1, max: 99.9 }, '%').transform((percent) => percent / 100),
  counts: countBetween({ min: 1, max: 20 }, 'counts'),
  longest: countBetween({ min: 1, max: 7_300 }, 'days'),
});

/** What a school would try with onions. */
export const PLAN_EXAMPLE = {
  ...{ constants: 'onion', moisture: '9', temperature: '35' },
  ...{ germination: '95', counts: '5', longest: '365' },
};
