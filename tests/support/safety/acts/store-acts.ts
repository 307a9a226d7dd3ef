import { addDays } from '@/lib/domain/calendar/calendar-date';
import { importReadings } from '@/lib/server/commands/import-readings';
import { moveStore } from '@/lib/server/commands/move-store';
import { takeBackReadings } from '@/lib/server/commands/take-back-readings';
import { updateStore } from '@/lib/server/commands/update-store';
import { uploadReadings } from '@/lib/server/commands/upload-readings';
import { LOGGER_TEXT_LAYOUT, loggerText } from '../../logger-text';
import { STEWARD } from '../../people';
import { type Act, volunteer } from './act';
import { ids, storesNow } from './bank-now';
import { daySince } from './day-since';

/** Stores, and what their loggers read. */
export const STORE_ACTS: Record<string, Act> = {
  'move a store': (choose) => {
    const stores = storesNow();
    const store = choose.one(stores.filter(({ kind }) => kind === 'box' || kind === 'shelf'));
    if (!store) return null;
    return volunteer(moveStore, {
      id: store.id,
      version: store.version,
      parentId: choose.one(['', ...stores.map(({ id }) => id)]),
      from: daySince(choose, '2024-01-01'),
      correction: choose.whole(0, 4) === 4 ? 'on' : undefined,
      moveAnyway: 'on',
    });
  },
  'set a store': (choose) => {
    const store = choose.one(storesNow());
    if (!store) return null;
    const inheritsTarget = store.parentId !== null && choose.whole(0, 1) === 1;
    return {
      command: updateStore,
      person: STEWARD,
      input: {
        ...{ id: store.id, version: store.version, name: store.name, kind: store.kind },
        inheritsTarget: inheritsTarget ? 'on' : undefined,
        targetTemperatureC: inheritsTarget ? '' : choose.one(['-18', '4', '12', '20']),
        targetHumidityPercent: inheritsTarget ? '' : choose.one(['', '30', '50']),
        setSince: daySince(choose, '2024-01-01'),
      },
    };
  },
  'log readings': (choose) => {
    const waiting = ids(`SELECT "id" FROM "ReadingImport" WHERE "status" = 'uploaded' ORDER BY "id" LIMIT 1`)[0];
    if (waiting !== undefined) return volunteer(importReadings, { importId: waiting, ...LOGGER_TEXT_LAYOUT });
    // Two days at four hours, often over what is there already.
    const from = addDays('2025-06-01', 2 * choose.whole(0, 20));
    const temperatures = Array.from({ length: 12 }, () => choose.whole(-20, 25));
    const bytes = new TextEncoder().encode(loggerText(`${from}T00:00Z`, temperatures, { everySeconds: 14_400 }));
    return volunteer(uploadReadings, { storeId: choose.one(storesNow())?.id, fileName: 'logger.csv', bytes });
  },
  'take readings back': (choose) => {
    const importId = choose.one(ids(`SELECT "id" FROM "ReadingImport" WHERE "status" = 'imported' ORDER BY "id"`));
    return importId === undefined ? null : { command: takeBackReadings, person: STEWARD, input: { importId } };
  },
};
