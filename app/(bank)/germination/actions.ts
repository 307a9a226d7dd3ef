'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runForm } from '@/app/_actions/run-form';
import { testPath } from '@/app/_format/links';
import { recordGerminationTest } from '@/lib/server/commands/record-germination-test';

/** A new test or the correction of one: both are a further test. */
export async function recordTest(state: FormState, data: FormData): Promise<FormState> {
  return runForm(recordGerminationTest, state, data, (test) => testPath(test.number));
}
