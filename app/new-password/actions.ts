'use server';

import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import type { FormState } from '@/app/_actions/form-state';
import { nestFields } from '@/app/_actions/nest-fields';
import { failedForm } from '@/app/_actions/run-form';
import { codeBearerSchema, newPasswordSchema } from '@/lib/schemas/person';
import { checkInput } from '@/lib/server/auth/check-input';
import { codeBearer } from '@/lib/server/auth/code-bearer';
import { setPasswordWithCode } from '@/lib/server/commands/set-password-with-code';

const formSchema = codeBearerSchema.extend({ password: newPasswordSchema });

/** Anybody may try; the code says who they are, and wrong tries are counted. */
export async function setPassword(state: FormState, data: FormData): Promise<FormState> {
  try {
    const { signInName, code, password } = checkInput(formSchema, nestFields(data));
    await setPasswordWithCode(await codeBearer(signInName, code, await headers()), { code, password });
  } catch (error) {
    return failedForm(error, state, data);
  }
  redirect('/sign-in?password=set');
}
