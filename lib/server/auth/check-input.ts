import 'server-only';
import type { z } from 'zod';
import { invalidInput } from '../commands/command';

/**
 * Checks the input of a form that is no command, because nobody acts yet: signing in.
 *
 * @throws AppError 'invalid-input' with a message for each field
 */
export function checkInput<Schema extends z.ZodType>(schema: Schema, input: unknown): z.output<Schema> {
  const parsed = schema.safeParse(input);
  if (!parsed.success) throw invalidInput(parsed.error);
  return parsed.data;
}
