'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runEditForm } from '@/app/_actions/run-edit-form';
import { runForm } from '@/app/_actions/run-form';
import { createLabelFormat } from '@/lib/server/commands/create-label-format';
import { deleteLabelFormat } from '@/lib/server/commands/delete-label-format';
import { updateLabelFormat } from '@/lib/server/commands/update-label-format';

const LIST = '/stores/labels/formats';

export async function addFormat(state: FormState, data: FormData): Promise<FormState> {
  return runForm(createLabelFormat, state, data, () => LIST);
}

export async function changeFormat(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(updateLabelFormat, state, data, () => LIST);
}

export async function removeFormat(state: FormState, data: FormData): Promise<FormState> {
  return runForm(deleteLabelFormat, state, data, () => LIST);
}
