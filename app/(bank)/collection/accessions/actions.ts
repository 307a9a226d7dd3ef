'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runEditForm } from '@/app/_actions/run-edit-form';
import { runForm } from '@/app/_actions/run-form';
import { accessionPath } from '@/app/_format/links';
import { createAccession } from '@/lib/server/commands/create-accession';
import { updateAccession } from '@/lib/server/commands/update-accession';

export async function addAccession(state: FormState, data: FormData): Promise<FormState> {
  return runForm(createAccession, state, data, ({ number }) => accessionPath(number));
}

export async function changeAccession(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(updateAccession, state, data, ({ number }) => accessionPath(number));
}
