'use server';

import { cookies } from 'next/headers';
import { redirect } from 'next/navigation';
import type { FormState } from '@/app/_actions/form-state';
import { runForm } from '@/app/_actions/run-form';
import { updateBank } from '@/lib/server/commands/update-bank';

export async function saveBank(state: FormState, data: FormData): Promise<FormState> {
  return runForm(updateBank, state, data, () => '/settings?saved=1');
}

const A_YEAR_IN_SECONDS = 31_536_000;

/** Light, dark, or as the device is set; kept on this device only, so anybody may choose. */
export async function chooseTheme(data: FormData): Promise<void> {
  const theme = data.get('theme');
  const jar = await cookies();
  if (theme === 'light' || theme === 'dark') jar.set('theme', theme, { maxAge: A_YEAR_IN_SECONDS, sameSite: 'lax' });
  else jar.delete('theme');
  redirect('/settings');
}
