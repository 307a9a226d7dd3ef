import 'server-only';
import { reader } from '../database/connections';

/** 'finished': written down without a tray. */
export type TrayStatus = 'open' | 'closed' | 'given-up' | 'finished';

/**
 * How the test of a number stands.
 *
 * @returns null when there is none
 * Checked in tests/server/queries/scanned.test.ts
 */
export async function findTrayStatus(number: string): Promise<TrayStatus | null> {
  const tray = await reader().tray.findUnique({ where: { number }, select: { status: true } });
  if (tray) return tray.status as TrayStatus;
  const test = await reader().germinationTest.findUnique({ where: { number }, select: { id: true } });
  return test && 'finished';
}
