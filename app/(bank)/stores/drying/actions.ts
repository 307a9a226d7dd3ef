'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runForm } from '@/app/_actions/run-form';
import { dryingPath } from '@/app/_format/links';
import { correctDryingWeighing } from '@/lib/server/commands/correct-drying-weighing';
import { endDryingRun } from '@/lib/server/commands/end-drying-run';
import { recordDryingWeighing } from '@/lib/server/commands/record-drying-weighing';
import { startDryingRun } from '@/lib/server/commands/start-drying-run';

const toRun = ({ number }: { number: string }) => dryingPath(number);

export async function startRun(state: FormState, data: FormData): Promise<FormState> {
  return runForm(startDryingRun, state, data, toRun);
}

export async function weighRun(state: FormState, data: FormData): Promise<FormState> {
  return runForm(recordDryingWeighing, state, data, toRun);
}

export async function correctWeighing(state: FormState, data: FormData): Promise<FormState> {
  return runForm(correctDryingWeighing, state, data, toRun);
}

export async function endRun(state: FormState, data: FormData): Promise<FormState> {
  return runForm(endDryingRun, state, data, toRun);
}
