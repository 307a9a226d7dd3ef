import { expect } from 'vitest';
import { AppError } from '@/lib/server/app-error';

/** The AppError that a command refuses with; the test fails when it does something else. */
export async function refusal(attempt: Promise<unknown>): Promise<AppError> {
  const outcome = await attempt.then(
    () => null,
    (error: unknown) => error,
  );
  expect(outcome, 'the command should have refused').toBeInstanceOf(AppError);
  return outcome as AppError;
}

/** The message beside one field of a refused form. */
export async function fieldMessage(attempt: Promise<unknown>, field: string): Promise<string | undefined> {
  return (await refusal(attempt)).fieldErrors[field];
}
