'use server';

import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import type { FormState } from '@/app/_actions/form-state';
import { nestFields } from '@/app/_actions/nest-fields';
import { failedForm } from '@/app/_actions/run-form';
import { signInSchema } from '@/lib/schemas/person';
import { wayBack } from '@/lib/schemas/way-back';
import { checkInput } from '@/lib/server/auth/check-input';
import { signOut as endThisSession, signIn as signInByName } from '@/lib/server/auth/sign-in';
import { isLoopbackOnly } from '@/lib/server/env';

/** Anybody may try; wrong tries are counted. On loopback there is nothing to sign in to. */
export async function signIn(state: FormState, data: FormData): Promise<FormState> {
  try {
    if (!isLoopbackOnly()) {
      const { signInName, password } = checkInput(signInSchema, nestFields(data));
      await signInByName(signInName, password, await headers());
    }
  } catch (error) {
    return failedForm(error, state, data);
  }
  redirect(wayBack.parse(data.get('then')));
}

/** Ends the session of whoever asks; does nothing for nobody. */
export async function signOut(): Promise<void> {
  if (!isLoopbackOnly()) await endThisSession(await headers());
  redirect('/sign-in');
}
