import { importReadings } from '@/lib/server/commands/import-readings';
import { uploadReadings } from '@/lib/server/commands/upload-readings';
import { connections } from '@/lib/server/database/connections';
import { STEWARD } from './people';

/** A logger's file of hourly readings from an instant on, with an offset of its own in every row. */
export function loggerText(
  from: string,
  temperatures: readonly number[],
  { humidity = 40, everySeconds = 3600 }: { humidity?: number; everySeconds?: number } = {},
): string {
  const start = Date.parse(from);
  const rows = temperatures.map(
    (temperature, index) =>
      `${new Date(start + index * everySeconds * 1000).toISOString().slice(0, 19)}Z;${temperature};${humidity}`,
  );
  return ['time;temperature °C;humidity %', ...rows, ''].join('\n');
}

export const LOGGER_TEXT_LAYOUT = {
  delimiter: 'semicolon',
  firstLine: '2',
  dateColumn: '0',
  timeColumn: '',
  temperatureColumn: '1',
  humidityColumn: '2',
  dateOrder: 'year-month-day',
  temperatureUnit: 'C',
  zone: 'file',
};

export async function uploadLoggerText(storeId: string, text: string, fileName = 'logger.csv'): Promise<number> {
  const { id } = await uploadReadings(STEWARD, { storeId, fileName, bytes: new TextEncoder().encode(text) });
  return id;
}

export async function importLoggerText(storeId: string, text: string, layout: Record<string, string> = {}) {
  const importId = await uploadLoggerText(storeId, text);
  return importReadings(STEWARD, { importId, ...LOGGER_TEXT_LAYOUT, ...layout });
}

export interface StoredReading {
  atEpochSeconds: number;
  temperatureC: number;
  relativeHumidity: number | null;
}

/** Readings of a store that hold, oldest first. */
export const readingsOf = (storeId: string): StoredReading[] =>
  connections()
    .bulk.prepare<[string], StoredReading>(
      `SELECT "atEpochSeconds", "temperatureC", "relativeHumidity" FROM "Reading" WHERE "storeId" = ? AND NOT "takenBack" ORDER BY 1`,
    )
    .all(storeId);

export const readingDaysOf = (storeId: string) =>
  connections()
    .bulk.prepare<[string], Record<string, number | string>>(
      `SELECT * FROM "ReadingDay" WHERE "storeId" = ? ORDER BY "epochDay"`,
    )
    .all(storeId);

export const climateVersionOf = (storeId: string): number =>
  connections()
    .bulk.prepare<[string], number>(`SELECT "climateVersion" FROM "Store" WHERE "id" = ?`)
    .pluck()
    .get(storeId) ?? Number.NaN;
