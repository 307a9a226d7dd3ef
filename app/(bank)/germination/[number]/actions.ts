'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runEditForm } from '@/app/_actions/run-edit-form';
import { runForm } from '@/app/_actions/run-form';
import { testPath } from '@/app/_format/links';
import { trayPath, traysSetPath } from '@/app/_format/tray-path';
import { closeTray } from '@/lib/server/commands/close-tray';
import { giveUpTray } from '@/lib/server/commands/give-up-tray';
import { reopenTray } from '@/lib/server/commands/reopen-tray';
import { setNextGroup } from '@/lib/server/commands/set-next-group';
import { settleCount } from '@/lib/server/commands/settle-count';
import { writeTrayCounts } from '@/lib/server/commands/write-tray-counts';

/** A day's counts from the form on a laptop; what somebody wrote meanwhile is shown before it is replaced. */
export async function writeCounts(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(writeTrayCounts, state, data, ({ number }) => trayPath(number));
}

export async function settle(state: FormState, data: FormData): Promise<FormState> {
  return runForm(settleCount, state, data, ({ number }) => trayPath(number));
}

/** Goes on to the finished test. */
export async function close(state: FormState, data: FormData): Promise<FormState> {
  return runForm(closeTray, state, data, ({ number }) => testPath(number));
}

export async function reopen(state: FormState, data: FormData): Promise<FormState> {
  return runForm(reopenTray, state, data, ({ number }) => trayPath(number));
}

export async function giveUp(state: FormState, data: FormData): Promise<FormState> {
  return runForm(giveUpTray, state, data, ({ number }) => trayPath(number));
}

/** Goes on to what is done next: labels, then the bench. */
export async function setGroup(state: FormState, data: FormData): Promise<FormState> {
  return runForm(setNextGroup, state, data, ({ number }) => traysSetPath([number]));
}
