'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runEditForm } from '@/app/_actions/run-edit-form';
import { runForm } from '@/app/_actions/run-form';
import { storePath } from '@/app/_format/store-path';
import { createStore } from '@/lib/server/commands/create-store';
import { moveStore } from '@/lib/server/commands/move-store';
import { updateStore } from '@/lib/server/commands/update-store';

export async function addStore(state: FormState, data: FormData): Promise<FormState> {
  return runForm(createStore, state, data, ({ id }) => storePath(id));
}

export async function changeStore(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(updateStore, state, data, ({ id }) => storePath(id));
}

export async function standElsewhere(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(moveStore, state, data, ({ id }) => storePath(id));
}
