'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runEditForm } from '@/app/_actions/run-edit-form';
import { runForm } from '@/app/_actions/run-form';
import { wayBack } from '@/app/_actions/way-back';
import { lotPath } from '@/app/_format/links';
import { logCleanedLot } from '@/lib/server/commands/log-cleaned-lot';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { updateLot } from '@/lib/server/commands/update-lot';

export async function logLot(state: FormState, data: FormData): Promise<FormState> {
  return runForm(logCleanedLot, state, data, ({ number }) => lotPath(number));
}

export async function changeLot(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(updateLot, state, data, ({ number }) => lotPath(number));
}

export async function takeBack(state: FormState, data: FormData): Promise<FormState> {
  return runForm(undoMovement, state, data, ({ lotNumber }) => wayBack(data, lotPath(lotNumber)));
}
