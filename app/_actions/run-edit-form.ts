import 'server-only';
import { redirect } from 'next/navigation';
import { currentPerson } from '@/lib/server/auth/current-person';
import type { Command } from '@/lib/server/commands/command';
import { StaleVersion } from '@/lib/server/commands/stale-version';
import type { FormState } from './form-state';
import { nestFields } from './nest-fields';
import { pagesChanged } from './pages-changed';
import { failedForm } from './run-form';

/**
 * As runForm, for a form that changes a record: when somebody else saved meanwhile, the form shows what they changed,
 * keeps what was typed, and carries the new version (VersionField), so that sending it again is a knowing choice.
 */
export async function runEditForm<Result>(
  command: Command<Result>,
  previous: FormState,
  formData: FormData,
  next: (result: Result) => string,
): Promise<FormState> {
  let result: Result;
  try {
    result = await command(await currentPerson(), nestFields(formData));
  } catch (error) {
    const state = failedForm(error, previous, formData);
    if (error instanceof StaleVersion) state.values.version = String(error.currentVersion);
    return state;
  }
  pagesChanged();
  redirect(next(result));
}
