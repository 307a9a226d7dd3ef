'use server';

import type { FormState } from '@/app/_actions/form-state';
import { nestFields } from '@/app/_actions/nest-fields';
import { pagesChanged } from '@/app/_actions/pages-changed';
import { failedForm, runForm } from '@/app/_actions/run-form';
import { currentPerson } from '@/lib/server/auth/current-person';
import { createCalendarFeed } from '@/lib/server/commands/create-calendar-feed';
import { revokeCalendarFeed } from '@/lib/server/commands/revoke-calendar-feed';
import type { IssuedSecretState } from './_parts/issued-address';

const PAGE = '/germination/calendar';

/** The secret comes back with the form instead of a redirect: it is in no address of a page. */
export async function makeCalendar(state: FormState, data: FormData): Promise<IssuedSecretState> {
  try {
    const { secret } = await createCalendarFeed(await currentPerson(), nestFields(data));
    pagesChanged();
    return { formError: null, fieldErrors: {}, values: {}, attempt: state.attempt + 1, secret };
  } catch (error) {
    return failedForm(error, state, data);
  }
}

export async function revokeCalendar(state: FormState, data: FormData): Promise<FormState> {
  return runForm(revokeCalendarFeed, state, data, () => PAGE);
}
