import { z } from 'zod';
import { WIDTH_BASES } from '../../domain/germination/sample-size/interval-width';
import { countBetween, numberBetween, optionalField, percent } from '../field-schemas';
import { allOrNone } from './parts-agree';
import { level, oneOf } from './question-parts';

/** Lines for which plans are made, percent. */
const LINE_PERCENT = { min: 20, max: 98 } as const;
/** points between the line and a lot that must be told from it; nearer takes thousands of seeds */
const POINTS = { min: 1, max: 30 } as const;
/** chance of a wrong decision, in 100 */
const WRONG_IN_100 = { min: 0.1, max: 30 } as const;
/** more looks than this are slow to work out and save no more seed */
const MOST_LOOKS = 25;

const points = numberBetween(POINTS, 'points');
const wrong = numberBetween(WRONG_IN_100, 'in 100').transform((inHundred) => inHundred / 100);
const line = numberBetween(LINE_PERCENT, '%');
const seedsToUse = countBetween({ min: 1, max: 10_000 }, 'seeds');

/** Test in groups: the line, how near to it lots must be told apart, how often that may go wrong, and the seeds. */
export const groupsQuestion = z
  .object({
    line,
    points,
    wrongKeep: wrong,
    wrongRegrow: wrong,
    group: countBetween({ min: 5, max: 400 }, 'seeds'),
    most: countBetween({ min: 5, max: 1_000 }, 'seeds'),
    /** so far, both or none */
    tested: optionalField(countBetween({ min: 0, max: 1_000 }, 'seeds')),
    germinated: optionalField(countBetween({ min: 0, max: 1_000 }, 'seeds')),
  })
  .refine((asked) => asked.line + asked.points < 100 && asked.line - asked.points > 0, {
    path: ['points'],
    message: 'Write fewer points: the line and these must stay between 0 and 100 %.',
  })
  .refine(({ group, most }) => most / group <= MOST_LOOKS, {
    path: ['group'],
    message: `Write a larger group: at most ${MOST_LOOKS} looks are planned.`,
  })
  .refine(({ tested, germinated }) => allOrNone(tested, germinated), {
    path: ['germinated'],
    message: 'Fill in both figures so far, or neither.',
  })
  .refine(({ tested = 0, germinated = 0 }) => germinated <= tested, {
    path: ['germinated'],
    message: 'More seeds germinated than were tested: check both.',
  });

/** One test against a line: a lot of `truly` must come out above it. */
export const oneTestQuestion = z
  .object({
    threshold: line,
    truly: percent,
    wrongAbove: wrong,
    missed: wrong,
    /** intra-dish correlation, hundredths */
    unevenness: optionalField(numberBetween({ min: 0, max: 30 }, 'in 100')),
    dish: optionalField(countBetween({ min: 1, max: 200 }, 'seeds')),
    spare: optionalField(seedsToUse),
  })
  .refine((asked) => asked.truly - asked.threshold >= POINTS.min, {
    path: ['truly'],
    message: 'Write at least one point more than the line.',
  });

/** A figure as narrow as wanted. */
export const widthQuestion = z.object({
  expected: percent,
  within: numberBetween({ min: 0.5, max: 45 }, 'points'),
  level,
  method: oneOf(['wilson', 'exact']),
  basis: oneOf(WIDTH_BASES),
  available: optionalField(seedsToUse),
});
