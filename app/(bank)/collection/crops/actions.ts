'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runEditForm } from '@/app/_actions/run-edit-form';
import { runForm } from '@/app/_actions/run-form';
import { cropPath } from '@/app/_format/links';
import { adoptLearntPriors } from '@/lib/server/commands/adopt-learnt-priors';
import { createCrop } from '@/lib/server/commands/create-crop';
import { updateCrop } from '@/lib/server/commands/update-crop';

export async function addCrop(state: FormState, data: FormData): Promise<FormState> {
  return runForm(createCrop, state, data, ({ id }) => cropPath(id));
}

export async function changeCrop(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(updateCrop, state, data, ({ id }) => cropPath(id));
}

export async function takeOverLearnt(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(adoptLearntPriors, state, data, ({ id }) => `${cropPath(id)}#learnt`);
}
