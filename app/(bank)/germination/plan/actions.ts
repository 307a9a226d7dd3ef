'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runForm } from '@/app/_actions/run-form';
import { traysSetPath } from '@/app/_format/tray-path';
import { setTrays as setTraysCommand } from '@/lib/server/commands/set-trays';

export async function setTrays(state: FormState, data: FormData): Promise<FormState> {
  return runForm(setTraysCommand, state, data, ({ numbers }) => traysSetPath(numbers));
}
