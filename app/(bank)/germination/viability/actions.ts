'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runForm } from '@/app/_actions/run-form';
import { viabilityTestPath } from '@/app/_format/links';
import { recordViabilityTest } from '@/lib/server/commands/record-viability-test';

/** A new tetrazolium or cut test or the correction of one: both are a further test. */
export async function recordViability(state: FormState, data: FormData): Promise<FormState> {
  return runForm(recordViabilityTest, state, data, ({ number }) => viabilityTestPath(number));
}
