/** Parts that several questions have in common, so that they take the same figures and refuse in the same words. */
import { z } from 'zod';
import { numberBetween } from '../field-schemas';

/**
 * One of a list of choices.
 *
 * @param choices  what a form or a link may send
 * @returns a schema giving the choice
 * Checked in tests/schemas/question-parts.test.ts
 */
export function oneOf<const Choices extends readonly string[]>(choices: Choices) {
  return z.enum(choices, 'Choose one of the list.');
}

/** How sure an interval is to be, in 100. */
export const LEVELS = ['80', '90', '95', '99'] as const;
export const level = oneOf(LEVELS);

/** How often what is planned should be enough, percent; never quite always. */
export const assurancePercent = numberBetween({ min: 1, max: 99.9 }, '%');

/** A balance step of 0 is not asked for: every balance rounds. */
export const balanceStepG = numberBetween({ min: 0.00001, max: 100 }, 'g');
