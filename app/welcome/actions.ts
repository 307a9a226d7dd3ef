'use server';

import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import type { FormState } from '@/app/_actions/form-state';
import { nestFields } from '@/app/_actions/nest-fields';
import { failedForm } from '@/app/_actions/run-form';
import { setupCodeSchema } from '@/lib/schemas/person';
import { checkInput } from '@/lib/server/auth/check-input';
import { founder } from '@/lib/server/auth/founder';
import { signIn } from '@/lib/server/auth/sign-in';
import { createFirstSteward, firstStewardSchema } from '@/lib/server/commands/create-first-steward';

const formSchema = setupCodeSchema.extend(firstStewardSchema.shape);

/** Open while nobody has an account, to whoever can read the terminal. */
export async function openBank(state: FormState, data: FormData): Promise<FormState> {
  try {
    const { setupCode, ...account } = checkInput(formSchema, nestFields(data));
    const requestHeaders = await headers();
    const { signInName } = await createFirstSteward(await founder(setupCode, requestHeaders), account);
    await signIn(signInName, account.password, requestHeaders);
  } catch (error) {
    return failedForm(error, state, data);
  }
  redirect('/');
}
