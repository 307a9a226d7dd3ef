/**
 * How a logger's file is laid out, guessed from some of its lines: which rows are readings, what stands between cells,
 * which column is what, in which order dates are written, the unit, the zone. What the file does not show is asked.
 */
import { guessDateOrder } from './guess-date-order';
import { headingMeans, offsetIn, unitIn } from './heading-words';
import {
  LOGGER_DELIMITERS,
  type LoggerDateOrder,
  type LoggerDelimiter,
  type LoggerLayout,
  type TemperatureUnit,
  ZONE_IN_THE_FILE,
} from './logger-layout';
import { type LoggerNumber, readLoggerNumber } from './logger-number';
import { cellsOf } from './row-cells';
import type { LineSample, SampleLine } from './sample-lines';
import { type WallTime, wallTimeReader } from './wall-time';
import { fixedZone } from './zone-clock';

export type GuessedLayout = Omit<LoggerLayout, 'dateOrder' | 'zone'> & {
  /** null: the file reads equally well in several orders */
  dateOrder: LoggerDateOrder | null;
  /** null: the file does not say */
  zone: string | null;
};

export type LoggerGuess =
  | {
      ok: true;
      layout: GuessedLayout;
      /** heading of each column, '' where there is none */
      headings: string[];
      /** lines above the readings, and the first readings */
      opening: SampleLine[];
      /** sentences for the user about what was supposed */
      notes: string[];
    }
  | { ok: false; reason: string };

interface ReadingRow extends SampleLine {
  cells: string[];
}

interface TimeColumns {
  date: number;
  time: number | null;
}

const ORDERS = ['year-month-day', 'day-month-year', 'month-day-year', 'epoch-seconds'] as const;
const OPENING_LINES = 14;
const COLUMNS_LOOKED_AT = 24;
/** A store this warm all along is more likely a cold one in Fahrenheit. */
const HOTTER_THAN_A_STORE_C = 45;

/**
 * @param sample  some lines of the file
 * @param latestInstant  seconds since 1970 UTC after which a reading lies in the future
 * @returns the layout with what is open left null, or why no readings were found
 * Checked in tests/domain/logger/guess-logger.test.ts and logger-files.test.ts
 */
export function guessLogger(sample: LineSample, latestInstant: number): LoggerGuess {
  const lines = [...sample.head, ...sample.spread];
  const found = LOGGER_DELIMITERS.map((delimiter) => readingRows(lines, delimiter)).reduce((best, other) =>
    other.rows.length > best.rows.length ? other : best,
  );
  const first = found.rows[0];
  if (!first || !found.columns) {
    return {
      ok: false,
      reason:
        'No rows with a date, a time and a number were found in this file. Export the readings from the logger as CSV or text, one reading a row.',
    };
  }
  const { delimiter, rows, columns } = found;
  const lastOfHead = sample.head.at(-1)?.line ?? 0;
  const dates = (some: ReadingRow[]) =>
    some.map(({ cells }) => ({
      date: cells[columns.date] ?? '',
      time: columns.time === null ? null : (cells[columns.time] ?? ''),
    }));
  const [early, late] = [rows.filter(({ line }) => line <= lastOfHead), rows.filter(({ line }) => line > lastOfHead)];
  const order = guessDateOrder(dates(early), dates(late), latestInstant);
  const above = sample.head.filter(({ line }) => line < first.line);
  const headings = headingsOf(above, first.cells.length, delimiter);
  const { temperature, humidity } = valueColumns(rows, columns, headings);
  if (temperature === null) {
    return { ok: false, reason: 'The rows have dates, but no column of numbers that could be temperatures.' };
  }
  const notes: string[] = [];
  const prose = above.map(({ text }) => text);
  const unit = unitOf(rows, temperature, headings, prose);
  if (unit === null) {
    const warm = median(numbersIn(rows, temperature)) > HOTTER_THAN_A_STORE_C;
    notes.push(
      warm
        ? 'The file does not say degrees C or F. It is read as C, but these figures look like Fahrenheit: check the unit.'
        : 'The file does not say degrees C or F: it is read as C.',
    );
  }
  if (order === 'open') {
    notes.push(
      'Its dates can be read with the day or the month first, and nothing in the file shows which: choose one.',
    );
  }
  const zone = zoneOf(dates(early), order, [
    headings[columns.date] ?? '',
    headings[columns.time ?? -1] ?? '',
    ...prose,
  ]);
  return {
    ok: true,
    layout: {
      delimiter,
      firstLine: first.line,
      dateColumn: columns.date,
      timeColumn: columns.time,
      temperatureColumn: temperature,
      humidityColumn: humidity,
      dateOrder: order === 'open' ? null : order,
      temperatureUnit: unit ?? 'C',
      zone,
    },
    headings: Array.from({ length: widest(rows) }, (_, column) => headings[column] ?? ''),
    opening: sample.head.slice(0, Math.max(OPENING_LINES, Math.min(above.length + 5, 40))),
    notes,
  };
}

/** Rows in which a date, a time and a number behind them stand in the same columns as in most others. */
function readingRows(lines: readonly SampleLine[], delimiter: LoggerDelimiter) {
  const groups = new Map<string, { rows: ReadingRow[]; columns: TimeColumns }>();
  const readers = ORDERS.map((order) => wallTimeReader(order));
  const wall: WallTime = { seconds: 0, offsetSeconds: null };
  const isTime = (text: string) => readers.some((reader) => reader.read(text, 0, text.length, -1, -1, wall));
  for (const { line, text } of lines) {
    const cells = cellsOf(text, delimiter).slice(0, COLUMNS_LOOKED_AT);
    const columns = timeColumns(cells, isTime);
    if (!columns) continue;
    const behind = Math.max(columns.date, columns.time ?? 0);
    if (!cells.some((cell, index) => index > behind && isNumber(cell))) continue;
    const key = `${columns.date} ${columns.time}`;
    const group = groups.get(key) ?? { rows: [], columns };
    group.rows.push({ line, text, cells });
    groups.set(key, group);
  }
  const none = { rows: [] as ReadingRow[], columns: null as TimeColumns | null };
  const best = [...groups.values()].reduce<typeof none>(
    (most, group) => (group.rows.length > most.rows.length ? group : most),
    none,
  );
  return { delimiter, ...best };
}

function timeColumns(cells: readonly string[], isTime: (text: string) => boolean): TimeColumns | null {
  for (let index = 0; index < cells.length; index += 1) {
    const cell = cells[index] as string;
    if (cell.length < 5) continue;
    if (isTime(cell)) return { date: index, time: null };
    const next = cells[index + 1] ?? '';
    // The time follows its date, or stands before it.
    if (/\d{1,2}[:.]\d{2}/.test(next) && isTime(`${cell} ${next}`)) return { date: index, time: index + 1 };
    if (/^\d{1,2}[:.]\d{2}/.test(cell) && isTime(`${next} ${cell}`)) return { date: index + 1, time: index };
  }
  return null;
}

/** The lines right above the first reading that have as many cells as it, one or two (the second with units). */
function headingsOf(above: readonly SampleLine[], width: number, delimiter: LoggerDelimiter): string[] {
  // Words between spaces cannot be told from the columns that they stand over.
  if (delimiter === ' ') return [];
  const headings: string[] = [];
  for (const { text } of above.slice(-3).reverse()) {
    const cells = cellsOf(text, delimiter);
    const filled = cells.filter((cell) => cell !== '').length;
    if (text.trim() === '') continue;
    if (filled < 2 || cells.length < Math.min(width, 3) - 1 || cells.some((cell) => isNumber(cell))) break;
    cells.forEach((cell, column) => {
      headings[column] = [cell, headings[column] ?? ''].filter(Boolean).join(' ');
    });
    if (cells.some((cell) => /\p{L}{4,}/u.test(cell))) break;
  }
  return headings;
}

function valueColumns(rows: readonly ReadingRow[], { date, time }: TimeColumns, headings: readonly string[]) {
  const numeric = Array.from({ length: widest(rows) }, (_, column) => column).filter(
    (column) =>
      column !== date &&
      column !== time &&
      rows.filter(({ cells }) => isNumber(cells[column] ?? '')).length > 0.5 * rows.length &&
      // Whole degrees that rise from row to row are still degrees when the heading says so.
      (isNamed(headings[column]) || !isRowNumber(rows, column)),
  );
  const meanings = numeric.map((column) => {
    const means = headingMeans(headings[column] ?? '');
    const shown = unitsIn(rows, column);
    return {
      column,
      temperature: means.temperature + (shown.unit ? 3 : 0),
      humidity: means.humidity + (shown.percent ? 3 : 0),
      unnamed: (headings[column] ?? '') === '' && !shown.unit && !shown.percent,
      named: means.temperature > 0 || means.humidity > 0,
    };
  });
  const bestBy = (score: (one: (typeof meanings)[number]) => number) => {
    const best = meanings.reduce((one, other) => (score(other) > score(one) ? other : one), meanings[0] as never);
    return best && score(best) > 0 ? best.column : null;
  };
  const anyNamed = meanings.some(({ temperature, humidity }) => temperature + humidity > 0);
  const behind = Math.max(date, time ?? 0);
  const temperature =
    bestBy((one) => (one.humidity > one.temperature ? 0 : one.temperature)) ??
    meanings.find((one) => one.column > behind && one.humidity === 0)?.column ??
    null;
  let humidity = bestBy((one) => (one.column === temperature ? 0 : one.humidity));
  if (humidity === null && !anyNamed) {
    const next = meanings.find((one) => temperature !== null && one.column > temperature && one.unnamed);
    if (next && numbersIn(rows, next.column).every((value) => value >= 0 && value <= 105)) humidity = next.column;
  }
  return { temperature, humidity };
}

const isNamed = (heading = '') => Object.values(headingMeans(heading)).some((score) => score > 0);

/** Whole numbers that rise by one from row to row. */
function isRowNumber(rows: readonly ReadingRow[], column: number): boolean {
  const values = rows.slice(0, 200).map(({ cells, line }) => ({ value: Number(cells[column] || Number.NaN), line }));
  if (values.length < 3) return column === 0;
  const steps = values.slice(1).map(({ value, line }, index) => {
    const before = values[index] as (typeof values)[number];
    return Number.isInteger(value) && Math.abs(value - before.value) <= line - before.line && value !== before.value;
  });
  const rising = values.at(-1) as (typeof values)[number];
  const span = Math.abs(rising.value - (values[0] as (typeof values)[number]).value);
  return steps.filter(Boolean).length >= 0.9 * steps.length && span >= 0.8 * (values.length - 1);
}

function unitOf(
  rows: readonly ReadingRow[],
  column: number,
  headings: readonly string[],
  prose: readonly string[],
): TemperatureUnit | null {
  const shown = unitsIn(rows, column).unit ?? unitIn(headings[column] ?? '');
  if (shown) return shown;
  const words = (headings[column] ?? '').trim().split(/[\s_(]+/);
  const last = words.at(-1)?.replace(/\W/g, '').toUpperCase();
  if (words.length > 1 && (last === 'C' || last === 'F')) return last;
  const named = new Set(prose.map(unitIn).filter((unit) => unit !== null));
  return named.size === 1 ? ([...named][0] ?? null) : null;
}

function unitsIn(rows: readonly ReadingRow[], column: number): { unit: TemperatureUnit | null; percent: boolean } {
  const number: LoggerNumber = { value: 0, unit: null, percent: false, decimals: 0 };
  for (const { cells } of rows.slice(0, 20)) {
    const cell = cells[column] ?? '';
    if (!readLoggerNumber(cell, 0, cell.length, number)) continue;
    if (number.unit || number.percent) return { unit: number.unit, percent: number.percent };
  }
  return { unit: null, percent: false };
}

function zoneOf(
  dates: { date: string; time: string | null }[],
  order: LoggerDateOrder | 'open' | null,
  said: readonly string[],
): string | null {
  if (order === 'epoch-seconds') return ZONE_IN_THE_FILE;
  const reader = wallTimeReader(order === 'open' || order === null ? 'day-month-year' : order);
  const wall: WallTime = { seconds: 0, offsetSeconds: null };
  const withOffset = dates.filter(({ date, time }) => {
    const text = time === null ? date : `${date} ${time}`;
    return reader.read(text, 0, text.length, -1, -1, wall) && wall.offsetSeconds !== null;
  });
  if (withOffset.length > 0.9 * dates.length) return ZONE_IN_THE_FILE;
  for (const text of said) {
    const offset = offsetIn(text);
    if (offset !== null) return fixedZone(offset);
  }
  return null;
}

const scratch: LoggerNumber = { value: 0, unit: null, percent: false, decimals: 0 };
const isNumber = (cell: string) => readLoggerNumber(cell, 0, cell.length, scratch);
const numbersIn = (rows: readonly ReadingRow[], column: number): number[] =>
  rows.flatMap(({ cells }) => (isNumber(cells[column] ?? '') ? [scratch.value] : []));
const median = (values: readonly number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
const widest = (rows: readonly ReadingRow[]) =>
  rows.slice(0, 200).reduce((most, { cells }) => Math.max(most, cells.length), 0);
