/** An amount of seed as the hand measures it: counted, or weighed. */
import { z } from 'zod';
import { choice } from './choice-field';
import { formNumber, positiveSeedCount, positiveWeightG } from './field-schemas';

export const AMOUNT_UNITS = ['seeds', 'grams'] as const;

/** Fields of a form that asks how much; `checkAmount` reads them together. */
export const amountFields = {
  amount: z.preprocess((value) => formNumber(value), z.unknown()),
  unit: choice(AMOUNT_UNITS, 'unit'),
};

/**
 * Transform for an object with `amountFields`: whole seeds or grams, within the limits of its unit.
 *
 * @returns the input with `amount` as a number; a message beside `amount` otherwise
 */
export function checkAmount<Input extends { amount: unknown; unit: (typeof AMOUNT_UNITS)[number] }>(
  input: Input,
  context: z.RefinementCtx,
): Omit<Input, 'amount'> & { amount: number } {
  const amount = (input.unit === 'seeds' ? positiveSeedCount : positiveWeightG).safeParse(input.amount);
  if (amount.success) return { ...input, amount: amount.data };
  context.addIssue({ code: 'custom', path: ['amount'], message: amount.error.issues[0]?.message ?? 'Fill this in.' });
  return z.NEVER;
}
