import 'server-only';
import { reader } from '../database/connections';

/** Stores to choose from, by name. */
export async function findStoreChoices(): Promise<{ id: string; name: string; targetTemperatureC: number }[]> {
  return reader().store.findMany({
    orderBy: { name: 'asc' },
    select: { id: true, name: true, targetTemperatureC: true },
  });
}
