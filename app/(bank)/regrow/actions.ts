'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runForm } from '@/app/_actions/run-form';
import { recordRegrowDecision } from '@/lib/server/commands/record-regrow-decision';

export async function decide(state: FormState, data: FormData): Promise<FormState> {
  return runForm(recordRegrowDecision, state, data, ({ accessionNumber }) => {
    return `/regrow/${encodeURIComponent(accessionNumber)}?decided=1`;
  });
}
