import { connections } from '@/lib/server/database/connections';
import { createLotWithPacket } from './create-tested-lot';
import { insertTray, type TrayToInsert } from './insert-tray';

/** A tray under way in the test bank, on a lot of its own unless one is named. */
export async function createTray({ lotNumber, ...tray }: Partial<TrayToInsert> = {}) {
  const number = lotNumber ?? 'L-2020-001';
  if (!lotNumber) await createLotWithPacket({ number });
  return insertTray(connections().bulk, { lotNumber: number, ...tray });
}
