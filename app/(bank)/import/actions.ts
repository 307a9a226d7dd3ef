'use server';

import { redirect } from 'next/navigation';
import type { FormState } from '@/app/_actions/form-state';
import { failedForm, runForm } from '@/app/_actions/run-form';
import { currentPerson } from '@/lib/server/auth/current-person';
import { runImport } from '@/lib/server/commands/run-import';
import { uploadImport } from '@/lib/server/commands/upload-import';

export async function chooseFile(state: FormState, data: FormData): Promise<FormState> {
  let id: string;
  try {
    const file = data.get('file');
    const chosen = file instanceof File && file.size > 0 ? file : null;
    const input = {
      kind: data.get('kind'),
      fileName: chosen?.name,
      bytes: chosen ? new Uint8Array(await chosen.arrayBuffer()) : undefined,
    };
    ({ id } = await uploadImport(await currentPerson(), input));
  } catch (error) {
    const failed = failedForm(error, state, data);
    const { fileName, bytes, ...others } = failed.fieldErrors;
    const about = others.file ?? fileName ?? bytes;
    return { ...failed, fieldErrors: about ? { ...others, file: about } : others };
  }
  redirect(`/import/${id}`);
}

export async function importFile(state: FormState, data: FormData): Promise<FormState> {
  return runForm(runImport, state, data, ({ importId, rows }) => `/import/${importId}?imported=${rows}`);
}
