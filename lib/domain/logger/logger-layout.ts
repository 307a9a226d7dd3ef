/** How a logger's file is laid out: what must be known to read it, each guessed from the file or said by the user. */

export const LOGGER_DELIMITERS = [',', ';', '\t', '|', ' '] as const;
export type LoggerDelimiter = (typeof LOGGER_DELIMITERS)[number];

/** 'epoch-seconds': seconds since 1970 in UTC; 'day-number': days since 1899-12-30 as spreadsheet programs count. */
export const DATE_ORDERS = [
  'day-month-year',
  'month-day-year',
  'year-month-day',
  'epoch-seconds',
  'day-number',
] as const;
export type LoggerDateOrder = (typeof DATE_ORDERS)[number];

export const TEMPERATURE_UNITS = ['C', 'F'] as const;
export type TemperatureUnit = (typeof TEMPERATURE_UNITS)[number];

/** The zone of a file whose times carry their own offset, or whose times are seconds since 1970. */
export const ZONE_IN_THE_FILE = 'file';

export interface LoggerLayout {
  /** ' ' stands for any run of spaces */
  delimiter: LoggerDelimiter;
  /** line of the first reading, from 1: what stands above it is heading and prose */
  firstLine: number;
  /** columns count from 0 */
  dateColumn: number;
  /** null when date and time stand in one column */
  timeColumn: number | null;
  temperatureColumn: number;
  humidityColumn: number | null;
  dateOrder: LoggerDateOrder;
  temperatureUnit: TemperatureUnit;
  /** ZONE_IN_THE_FILE, a fixed offset ('UTC', 'UTC+01:00'), or an IANA name ('Europe/Lisbon') */
  zone: string;
}
