'use server';

import type { FormState } from '@/app/_actions/form-state';
import { nestFields } from '@/app/_actions/nest-fields';
import { pagesChanged } from '@/app/_actions/pages-changed';
import { failedForm, runForm } from '@/app/_actions/run-form';
import { currentPerson } from '@/lib/server/auth/current-person';
import { blockPerson as block } from '@/lib/server/commands/block-person';
import { changePersonRole } from '@/lib/server/commands/change-person-role';
import type { Command } from '@/lib/server/commands/command';
import { createPasswordCode } from '@/lib/server/commands/create-password-code';
import { createPerson } from '@/lib/server/commands/create-person';
import { endPersonSessions } from '@/lib/server/commands/end-person-sessions';
import { unblockPerson as unblock } from '@/lib/server/commands/unblock-person';
import type { IssuedCode, IssuedCodeState } from './_parts/issued-code';

const toPerson = ({ personId }: { personId: string }) => `/settings/people/${personId}?done=1`;

export async function addPerson(state: FormState, data: FormData): Promise<FormState> {
  return showCode(createPerson, state, data);
}

export async function makePasswordCode(state: FormState, data: FormData): Promise<FormState> {
  return showCode(createPasswordCode, state, data);
}

export async function changeRole(state: FormState, data: FormData): Promise<FormState> {
  return runForm(changePersonRole, state, data, toPerson);
}

export async function blockPerson(state: FormState, data: FormData): Promise<FormState> {
  return runForm(block, state, data, toPerson);
}

export async function unblockPerson(state: FormState, data: FormData): Promise<FormState> {
  return runForm(unblock, state, data, toPerson);
}

export async function endSessions(state: FormState, data: FormData): Promise<FormState> {
  return runForm(endPersonSessions, state, data, toPerson);
}

/** The code comes back with the form instead of a redirect: it is in no address and on no other page. */
async function showCode(command: Command<IssuedCode>, previous: FormState, data: FormData): Promise<IssuedCodeState> {
  try {
    const issued = await command(await currentPerson(), nestFields(data));
    pagesChanged();
    return { formError: null, fieldErrors: {}, values: {}, attempt: previous.attempt + 1, issued };
  } catch (error) {
    return failedForm(error, previous, data);
  }
}
