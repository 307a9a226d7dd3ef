'use server';

import { redirect } from 'next/navigation';
import type { FormState } from '@/app/_actions/form-state';
import { nestFields } from '@/app/_actions/nest-fields';
import { pagesChanged } from '@/app/_actions/pages-changed';
import { failedForm, runForm } from '@/app/_actions/run-form';
import { experimentPath } from '@/app/_format/experiment-path';
import { AppError } from '@/lib/server/app-error';
import { currentPerson } from '@/lib/server/auth/current-person';
import { type Command, requireRole } from '@/lib/server/commands/command';
import { createStorageExperiment } from '@/lib/server/commands/create-storage-experiment';
import { deleteStorageExperiment } from '@/lib/server/commands/delete-storage-experiment';
import { saveExperimentConstants } from '@/lib/server/commands/save-experiment-constants';
import { StaleVersion } from '@/lib/server/commands/stale-version';
import { updateStorageExperiment } from '@/lib/server/commands/update-storage-experiment';
import { checkTable, textOfFile } from './_parts/check-table';

export async function addExperiment(state: FormState, data: FormData): Promise<FormState> {
  return takeIn(createStorageExperiment, state, data);
}

export async function changeExperiment(state: FormState, data: FormData): Promise<FormState> {
  return takeIn(updateStorageExperiment, state, data);
}

export async function removeExperiment(state: FormState, data: FormData): Promise<FormState> {
  return runForm(deleteStorageExperiment, state, data, () => '/reference/storage-experiments');
}

export async function saveConstants(state: FormState, data: FormData): Promise<FormState> {
  return runForm(saveExperimentConstants, state, data, ({ id }) => `/reference#${id}`);
}

/** Takes an experiment in, or only reads its table and says what was found. A chosen file ends up in the text box. */
async function takeIn(command: Command<{ id: string }>, state: FormState, data: FormData): Promise<FormState> {
  const file = data.get('file');
  const bytes = file instanceof File && file.size > 0 ? new Uint8Array(await file.arrayBuffer()) : null;
  let id: string;
  try {
    const person = requireRole(await currentPerson(), command.role);
    const { file: _, ...fields } = nestFields(data);
    const table = bytes ?? fields.table;
    if (data.get('intent') === 'check') return withFile(checkTable(table, unsaved(state, data)), bytes);
    ({ id } = await command(person, { ...fields, table }));
  } catch (error) {
    const failed = withFile(failedForm(error, state, data), bytes);
    if (error instanceof StaleVersion) failed.values.version = String(error.currentVersion);
    return failed;
  }
  pagesChanged();
  redirect(experimentPath(id));
}

/** The form as it was typed, with nothing saved and nothing wrong. */
const unsaved = (state: FormState, data: FormData) => failedForm(new AppError('refused', ''), state, data);

/** A browser never gives a chosen file back, so what it held is kept as text. */
function withFile(state: FormState, bytes: Uint8Array | null): FormState {
  const text = bytes && textOfFile(bytes);
  return text ? { ...state, values: { ...state.values, table: text } } : state;
}
