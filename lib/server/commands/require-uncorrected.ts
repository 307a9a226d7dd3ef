import { AppError } from '../app-error';

interface Correctable {
  number: string;
  correctedBy: { number: string } | null;
}

/**
 * A test that may be corrected: it is there, and no later entry has corrected it.
 *
 * @returns the test without `correctedBy`
 * @throws AppError 'not-found', or 'conflict' naming the entry that corrected it
 */
export function requireUncorrected<Test extends Correctable>(test: Test | null): Omit<Test, 'correctedBy'> {
  if (!test) throw new AppError('not-found', 'The test to be corrected is not in the collection.');
  const { correctedBy, ...rest } = test;
  if (correctedBy) {
    throw new AppError(
      'conflict',
      `${test.number} has been corrected already, by ${correctedBy.number}. If that is wrong too, correct ${correctedBy.number}.`,
    );
  }
  return rest;
}
