'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runForm } from '@/app/_actions/run-form';
import { addLongevityConstants } from '@/lib/server/commands/add-longevity-constants';

export async function addConstants(state: FormState, data: FormData): Promise<FormState> {
  return runForm(addLongevityConstants, state, data, ({ id }) => `/reference#${id}`);
}
