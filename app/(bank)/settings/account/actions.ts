'use server';

import { headers } from 'next/headers';
import type { FormState } from '@/app/_actions/form-state';
import { failedForm, runForm } from '@/app/_actions/run-form';
import { confirmOwnPassword } from '@/lib/server/auth/confirm-own-password';
import { currentSession } from '@/lib/server/auth/current-person';
import { changeOwnPassword } from '@/lib/server/commands/change-own-password';
import { endOwnSession } from '@/lib/server/commands/end-own-session';

export async function changePassword(state: FormState, data: FormData): Promise<FormState> {
  try {
    const session = await currentSession();
    const password = data.get('currentPassword');
    if (session && typeof password === 'string' && password !== '') {
      await confirmOwnPassword(session.person.id, password, await headers());
      data.set('keepSessionId', session.id);
    }
  } catch (error) {
    return failedForm(error, state, data);
  }
  return runForm(changeOwnPassword, state, data, () => '/settings/account?done=password');
}

export async function endSession(state: FormState, data: FormData): Promise<FormState> {
  return runForm(endOwnSession, state, data, () => '/settings/account?done=session');
}
