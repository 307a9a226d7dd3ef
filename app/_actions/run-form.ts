import 'server-only';
import { redirect } from 'next/navigation';
import { AppError } from '@/lib/server/app-error';
import { currentPerson } from '@/lib/server/auth/current-person';
import type { Command } from '@/lib/server/commands/command';
import { log } from '@/lib/server/log';
import type { FormState } from './form-state';
import { nestFields } from './nest-fields';
import { pagesChanged } from './pages-changed';

/**
 * The five steps of every form: who asks, what was typed, the command, fresh pages, the next screen.
 * The command itself checks the role and the input.
 */
export async function runForm<Result>(
  command: Command<Result>,
  previous: FormState,
  formData: FormData,
  next: (result: Result) => string,
): Promise<FormState> {
  let result: Result;
  try {
    result = await command(await currentPerson(), nestFields(formData));
  } catch (error) {
    return failedForm(error, previous, formData);
  }
  pagesChanged();
  redirect(next(result));
}

export function failedForm(error: unknown, previous: FormState, formData: FormData): FormState {
  const attempt = previous.attempt + 1;
  const values = typedValues(formData);
  if (error instanceof AppError) {
    const refused = error.code === 'sign-in-needed' || error.code === 'not-allowed' ? error.code : undefined;
    return { formError: error.userMessage, fieldErrors: error.fieldErrors, values, attempt, refused };
  }
  log.error({ error }, 'a form failed');
  return {
    formError: 'Something went wrong on our side. Nothing was saved; what you typed is still here. Try again.',
    fieldErrors: {},
    values,
    attempt,
  };
}

function typedValues(formData: FormData): Record<string, string> {
  const values: Record<string, string> = {};
  for (const [name, value] of formData) {
    if (typeof value === 'string' && !name.startsWith('$ACTION') && !/password|code/i.test(name)) values[name] = value;
  }
  return values;
}
