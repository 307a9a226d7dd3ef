'use server';

import type { FormState } from '@/app/_actions/form-state';
import { pagesChanged } from '@/app/_actions/pages-changed';
import { runEditForm } from '@/app/_actions/run-edit-form';
import { runForm } from '@/app/_actions/run-form';
import { listHref } from '@/app/_format/list-href';
import { requestPath } from '@/app/_format/request-path';
import { lotsToShareQuery } from '@/lib/schemas/sharing-query';
import { addRequestLine } from '@/lib/server/commands/add-request-line';
import { createRequest } from '@/lib/server/commands/create-request';
import { sendRequest } from '@/lib/server/commands/send-request';
import { setRequestLines } from '@/lib/server/commands/set-request-lines';
import { turnDownRequest } from '@/lib/server/commands/turn-down-request';
import { updateRequest } from '@/lib/server/commands/update-request';

export async function openRequest(state: FormState, data: FormData): Promise<FormState> {
  return runForm(createRequest, state, data, ({ number }) => `${requestPath(number)}/choose`);
}

export async function changeRequest(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(updateRequest, state, data, ({ number }) => requestPath(number));
}

/** Stays with what was looked for, so that one lot after the other can be put on the list. */
export async function addLine(state: FormState, data: FormData): Promise<FormState> {
  return runForm(addRequestLine, state, data, ({ requestNumber, lotNumber, version }) => {
    const { page, ...found } = lotsToShareQuery.parse(Object.fromEntries(data));
    // The version makes each answer an address of its own, so that the boxes are empty again.
    return listHref(`${requestPath(requestNumber)}/choose`, { ...found, page }, { page, added: lotNumber, version });
  });
}

export async function changeLines(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(setRequestLines, state, data, ({ number, version }) => `${requestPath(number)}?saved=${version}`);
}

/** After a refusal the list is shown as it is now: it may be the list that changed. */
export async function sendSeed(state: FormState, data: FormData): Promise<FormState> {
  const answer = await runForm(sendRequest, state, data, ({ number }) => `${requestPath(number)}?sent=1`);
  pagesChanged();
  return answer;
}

export async function turnDown(state: FormState, data: FormData): Promise<FormState> {
  const answer = await runForm(turnDownRequest, state, data, ({ number }) => requestPath(number));
  pagesChanged();
  return answer;
}
