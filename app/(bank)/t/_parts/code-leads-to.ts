import { benchPath } from '@/app/_format/bench-path';
import { testPath } from '@/app/_format/links';
import type { TrayStatus } from '@/lib/server/queries/tray-status';

/**
 * Where the code on a dish leads: to the bench while there is something to count, for those who may; otherwise to the
 * test.
 *
 * Checked in tests/app/code-leads-to.test.ts
 */
export const codeLeadsTo = (number: string, status: TrayStatus, mayCount: boolean): string =>
  status === 'open' && mayCount ? benchPath(number) : testPath(number);
