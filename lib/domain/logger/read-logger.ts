/**
 * A logger file to readings: text comes in pieces, readings go into plain number arrays, so that half a million rows
 * take some ten megabytes and the caller may look after others between two pieces.
 *
 * What a row cannot give is left out and said, by kind and with its first lines; nothing else is lost by it. Readings
 * come back in the order of time. Of two at the same instant the first in the file is kept.
 */
import {
  EARLIEST_INSTANT,
  FAR_FROM_NEIGHBOURS_K,
  JUMP_K,
  POSSIBLE_HUMIDITY_PERCENT,
  POSSIBLE_TEMPERATURE_C,
  POWER_ON_TEMPERATURE_C,
} from './impossible-values';
import { type LoggerDelimiter, type LoggerLayout, ZONE_IN_THE_FILE } from './logger-layout';
import { type LoggerNumber, readLoggerNumber } from './logger-number';
import { type LoggerProblem, type ProblemKind, problemList } from './logger-problems';
import { readingStore, type TimedReadings } from './reading-store';
import { cellsOf, findCells, rowCells } from './row-cells';
import { lineWalker } from './walk-lines';
import { type WallTime, wallTimeReader } from './wall-time';
import { zoneClock } from './zone-clock';

export interface LoggerContents {
  /** in the order of time, one an instant */
  readings: TimedReadings;
  /** rows of the table that are not blank */
  rows: number;
  /** the last reading stands first in the file */
  newestFirst: boolean;
  problems: LoggerProblem[];
}

export interface LoggerReader {
  push(piece: string): void;
  finish(): LoggerContents;
}

const SECONDS_PER_DAY = 86_400;
/** Fahrenheit leaves a tail of digits that nobody measured: ten-thousandths of a degree are kept. */
const KEPT_PER_DEGREE = 10_000;

/**
 * @param layout  from guessLogger, completed by the user
 * @param latestInstant  seconds since 1970 UTC after which a reading lies in the future
 * @throws RangeError when the layout's zone is none
 * Checked in tests/domain/logger/read-logger.test.ts, logger-files.test.ts (layouts) and round-trip.test.ts (laws)
 */
export function loggerReader(layout: LoggerLayout, latestInstant: number): LoggerReader {
  const { delimiter, firstLine, dateColumn, temperatureColumn } = layout;
  const timeColumn = layout.timeColumn ?? -1;
  const humidityColumn = layout.humidityColumn ?? -1;
  const cells = rowCells(Math.max(dateColumn, timeColumn, temperatureColumn, humidityColumn) + 1);
  const { starts, ends } = cells;
  const wallTime = wallTimeReader(layout.dateOrder);
  const clock = zoneClock(layout.zone === ZONE_IN_THE_FILE ? 'UTC' : layout.zone);
  const isFahrenheit = layout.temperatureUnit === 'F';
  const problems = problemList();
  const store = readingStore();
  const wall: WallTime = { seconds: 0, offsetSeconds: null };
  const number: LoggerNumber = { value: 0, unit: null, percent: false, decimals: 0 };
  let rows = 0;
  let previous = Number.NaN;
  let forward = 0;
  let backward = 0;
  let lastRow = '';

  const walker = lineWalker((text, from, to, line, ended) => {
    if (line < firstLine) return;
    if (!ended && isCutShort(lastRow, text.slice(from, to), delimiter)) {
      rows += 1;
      problems.add('cut-short', line, null, text, from, to);
      return;
    }
    if (!readRow(text, from, to, line)) return;
    piece = text;
    rowFrom = from;
    rowTo = to;
  });
  /** Where the last row that gave a reading stands. Plain variables: an object for each row would be half the work. */
  let piece = '';
  let rowFrom = 0;
  let rowTo = 0;

  /** @returns whether it gave a reading */
  function readRow(text: string, from: number, to: number, line: number): boolean {
    const count = findCells(text, from, to, delimiter, cells);
    const hasTime = dateColumn < count && timeColumn < count;
    if (
      !hasTime ||
      !wallTime.read(
        text,
        starts[dateColumn] as number,
        ends[dateColumn] as number,
        timeColumn < 0 ? -1 : (starts[timeColumn] as number),
        timeColumn < 0 ? -1 : (ends[timeColumn] as number),
        wall,
      )
    ) {
      if (isBlank(text, from, to)) return false;
      rows += 1;
      problems.add('no-time', line, hasTime ? dateColumn : null, text, from, to);
      return false;
    }
    rows += 1;
    if (
      temperatureColumn >= count ||
      !readLoggerNumber(text, starts[temperatureColumn] as number, ends[temperatureColumn] as number, number)
    ) {
      problems.add('no-value', line, temperatureColumn, text, from, to);
      return false;
    }
    const written = number.value;
    const temperatureC =
      number.unit === 'F' || (number.unit === null && isFahrenheit)
        ? Math.round(((written - 32) / 1.8) * KEPT_PER_DEGREE) / KEPT_PER_DEGREE
        : written;
    if (temperatureC < POSSIBLE_TEMPERATURE_C.min || temperatureC > POSSIBLE_TEMPERATURE_C.max) {
      problems.add(
        'impossible-temperature',
        line,
        temperatureColumn,
        text,
        starts[temperatureColumn],
        ends[temperatureColumn],
      );
      return false;
    }
    const instant = instantOf(line, text);
    if (instant === null) return false;
    let humidity = Number.NaN;
    if (humidityColumn >= 0 && humidityColumn < count) {
      humidity = humidityOf(text, starts[humidityColumn] as number, ends[humidityColumn] as number, line);
    }
    noteOrder(instant, line, text, from, to);
    store.add(instant, temperatureC, humidity, line);
    return true;
  }

  function instantOf(line: number, text: string): number | null {
    let instant: number;
    if (wall.offsetSeconds !== null) instant = wall.seconds - wall.offsetSeconds;
    else {
      const offset = clock.offsetOfDay(Math.floor(wall.seconds / SECONDS_PER_DAY));
      if (offset !== null) instant = wall.seconds - offset;
      else {
        const found = clock.instantOf(wall.seconds);
        if (found.kind === 'never') {
          noteTime('skipped-hour', line, text);
          return null;
        }
        if (found.kind === 'once') instant = found.instant;
        else {
          noteTime('repeated-hour', line, text);
          instant = inOrder(found.earlier, found.later);
        }
      }
    }
    if (instant > latestInstant) {
      noteTime('future', line, text);
      return null;
    }
    if (instant < EARLIEST_INSTANT) {
      noteTime('too-old', line, text);
      return null;
    }
    return instant;
  }

  function noteTime(kind: ProblemKind, line: number, text: string): void {
    problems.add(kind, line, dateColumn, text, starts[dateColumn], ends[Math.max(timeColumn, dateColumn)]);
  }

  /** Of the two instants that an hour shown twice may mean, the one that carries on from the row before. */
  function inOrder(earlier: number, later: number): number {
    if (backward > forward) return later < previous || Number.isNaN(previous) ? later : earlier;
    return earlier > previous || Number.isNaN(previous) ? earlier : later;
  }

  function humidityOf(text: string, from: number, to: number, line: number): number {
    if (!readLoggerNumber(text, from, to, number)) return Number.NaN;
    const percent = number.value;
    if (percent < POSSIBLE_HUMIDITY_PERCENT.min || percent > POSSIBLE_HUMIDITY_PERCENT.max) {
      problems.add('impossible-humidity', line, humidityColumn, text, from, to);
      return Number.NaN;
    }
    if (percent >= 0 && percent <= 100) return percent / 100;
    problems.add('humidity-over-full', line, humidityColumn, text, from, to);
    return percent < 0 ? 0 : 1;
  }

  const later: { line: number; text: string }[] = [];
  const earlier: { line: number; text: string }[] = [];
  function noteOrder(instant: number, line: number, text: string, from: number, to: number): void {
    if (instant > previous) {
      forward += 1;
      if (later.length < 5) later.push({ line, text: text.slice(from, to) });
    } else if (instant < previous) {
      backward += 1;
      if (earlier.length < 5) earlier.push({ line, text: text.slice(from, to) });
    }
    previous = instant;
  }

  return {
    push: (more) => {
      walker.push(more);
      // Kept as a text of its own, so that the piece it came from can go.
      if (rowTo > rowFrom) lastRow = ` ${piece.slice(rowFrom, rowTo)}`.slice(1);
      piece = '';
      rowTo = rowFrom;
    },
    finish: () => {
      walker.finish();
      const newestFirst = backward > forward;
      const [against, examples] = newestFirst ? [forward, later] : [backward, earlier];
      for (let index = 0; index < against; index += 1) {
        const example = examples[index];
        problems.add('out-of-order', example?.line ?? 0, null, example?.text ?? '');
      }
      const readings = store.inOrderOfTime((kind, line, text) =>
        problems.add(kind, line, kind === 'same-again' ? null : temperatureColumn, text),
      );
      return {
        readings: withoutPowerOn(readings, problems, temperatureColumn),
        rows,
        newestFirst,
        problems: problems.inOrder(),
      };
    },
  };
}

/** Takes out power-on values and tells jumps. */
function withoutPowerOn(
  readings: TimedReadings,
  problems: ReturnType<typeof problemList>,
  column: number,
): TimedReadings {
  const { temperatureC, lines } = readings;
  const last = temperatureC.length - 1;
  const leftOut = new Set<number>();
  for (let index = 0; index <= last; index += 1) {
    const value = temperatureC[index] as number;
    if (Math.abs(value - POWER_ON_TEMPERATURE_C) > 0.005 || last === 0) continue;
    const far = (other: number | undefined) => other === undefined || Math.abs(value - other) > FAR_FROM_NEIGHBOURS_K;
    if (!far(temperatureC[index - 1]) || !far(temperatureC[index + 1])) continue;
    problems.add('power-on-value', lines[index] as number, column, String(value));
    leftOut.add(index);
  }
  const kept = leftOut.size === 0 ? readings : readings.without(leftOut);
  for (let index = 1; index < kept.temperatureC.length; index += 1) {
    const step = (kept.temperatureC[index] as number) - (kept.temperatureC[index - 1] as number);
    if (Math.abs(step) <= JUMP_K) continue;
    problems.add(
      'jump',
      kept.lines[index] as number,
      column,
      `${kept.temperatureC[index - 1]} °C, then ${kept.temperatureC[index]} °C`,
    );
  }
  return kept;
}

/**
 * Whether the file's last row, which has no line end, was cut off. A file may well end without one; so the row counts
 * as whole only when it has as many filled cells as the row before it, and its last cell as many decimals (or, without
 * decimals, as many characters). Now and then this leaves out a row that was whole: the next file brings it.
 */
function isCutShort(before: string, row: string, delimiter: LoggerDelimiter): boolean {
  if (before === '' || row.trim() === '') return false;
  if (row.split('"').length % 2 === 0) return true;
  const filled = (text: string) => cellsOf(text, delimiter).filter((cell) => cell !== '');
  const [whole, last] = [filled(before), filled(row)];
  if (last.length !== whole.length) return last.length < whole.length;
  const decimals = (cell = '') => /[.,](\d*)/.exec(cell)?.[1]?.length ?? null;
  const expected = decimals(whole.at(-1));
  if (expected !== null) return (decimals(last.at(-1)) ?? -1) < expected;
  return (last.at(-1)?.length ?? 0) < (whole.at(-1)?.length ?? 0);
}

function isBlank(text: string, from: number, to: number): boolean {
  for (let at = from; at < to; at += 1) {
    const code = text.charCodeAt(at);
    if (code > 32 && code !== 44 && code !== 59 && code !== 124 && code !== 34 && code !== 0xfeff) return false;
  }
  return true;
}
