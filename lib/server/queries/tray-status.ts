import 'server-only';
import { reader } from '../database/connections';

/**
 * How the test of a number stands.
 *
 * @returns 'finished' for one that was written down without a tray; null when there is none
 * Checked in tests/server/queries/scanned.test.ts
 */
export async function findTrayStatus(number: string): Promise<'open' | 'closed' | 'given-up' | 'finished' | null> {
  const tray = await reader().tray.findUnique({ where: { number }, select: { status: true } });
  if (tray) return tray.status as 'open' | 'closed' | 'given-up';
  const test = await reader().germinationTest.findUnique({ where: { number }, select: { id: true } });
  return test && 'finished';
}
