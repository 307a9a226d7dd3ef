'use server';

import { redirect } from 'next/navigation';
import type { FormState } from '@/app/_actions/form-state';
import { nestFields } from '@/app/_actions/nest-fields';
import { pagesChanged } from '@/app/_actions/pages-changed';
import { failedForm, runForm } from '@/app/_actions/run-form';
import { readingImportPath, readingsPath } from '@/app/_format/readings-path';
import { currentPerson } from '@/lib/server/auth/current-person';
import { createReadingToken } from '@/lib/server/commands/create-reading-token';
import { importReadings } from '@/lib/server/commands/import-readings';
import { revokeReadingToken } from '@/lib/server/commands/revoke-reading-token';
import { takeBackReadings } from '@/lib/server/commands/take-back-readings';
import { uploadReadings } from '@/lib/server/commands/upload-readings';
import type { IssuedTokenState } from './_parts/issued-token';

export async function chooseLoggerFile(state: FormState, data: FormData): Promise<FormState> {
  let waiting: { id: number; storeId: string };
  try {
    const file = data.get('file');
    const chosen = file instanceof File && file.size > 0 ? file : null;
    waiting = await uploadReadings(await currentPerson(), {
      storeId: data.get('storeId'),
      fileName: chosen?.name,
      bytes: chosen ? new Uint8Array(await chosen.arrayBuffer()) : undefined,
    });
  } catch (error) {
    const failed = failedForm(error, state, data);
    const { fileName, bytes, ...others } = failed.fieldErrors;
    const about = others.file ?? fileName ?? bytes;
    return { ...failed, fieldErrors: about ? { ...others, file: about } : others };
  }
  redirect(readingImportPath(waiting.storeId, waiting.id));
}

export async function importLoggerFile(state: FormState, data: FormData): Promise<FormState> {
  return runForm(importReadings, state, data, ({ storeId, importId }) => readingImportPath(storeId, importId));
}

export async function takeImportBack(state: FormState, data: FormData): Promise<FormState> {
  return runForm(takeBackReadings, state, data, ({ storeId }) => readingsPath(storeId));
}

/** The token comes back with the form instead of a redirect: it is in no address and on no other page. */
export async function makeToken(state: FormState, data: FormData): Promise<IssuedTokenState> {
  try {
    const { token } = await createReadingToken(await currentPerson(), nestFields(data));
    pagesChanged();
    return { formError: null, fieldErrors: {}, values: {}, attempt: state.attempt + 1, token };
  } catch (error) {
    return failedForm(error, state, data);
  }
}

export async function revokeToken(state: FormState, data: FormData): Promise<FormState> {
  return runForm(revokeReadingToken, state, data, ({ storeId }) => readingsPath(storeId));
}
