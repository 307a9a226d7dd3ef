import { inBulkTransaction } from '../lib/server/database/bulk-transaction';
import { enqueueWrite } from '../lib/server/database/write-queue';
import { addReadings } from '../lib/server/readings/add-readings';
import type { Readings } from './generators/store-readings';

/** The ReadingImport of readings that no import brought. */
const NO_IMPORT = 0;

/** Puts a logger's readings into a store, with their daily sums, and makes known that its climate has changed. */
export async function writeReadings(storeId: string, readings: Readings): Promise<void> {
  const { epochSeconds: atEpochSeconds, temperatureC, relativeHumidity } = readings;
  const columns = { atEpochSeconds, temperatureC, relativeHumidity };
  await enqueueWrite(() => inBulkTransaction((bulk) => addReadings(bulk, storeId, NO_IMPORT, columns)));
}
