'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runForm } from '@/app/_actions/run-form';
import { moisturePath } from '@/app/_format/links';
import { recordMoistureTest } from '@/lib/server/commands/record-moisture-test';

/** A new moisture test or the correction of one: both are a further test. */
export async function recordMoisture(state: FormState, data: FormData): Promise<FormState> {
  return runForm(
    recordMoistureTest,
    state,
    data,
    ({ lotNumber, number }) => `${moisturePath(lotNumber)}?recorded=${encodeURIComponent(number)}`,
  );
}
