import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LoggerDateOrder } from '@/lib/domain/logger/logger-layout';
import { guessText, LATEST, problemCounts, readText, written } from './read-text';

/** A file as some logger may write it, and the readings that it was written from. */
interface WrittenFile {
  rows: string[];
  above: string[];
  lineEnd: string;
  zone: string;
  order: LoggerDateOrder;
  isFahrenheit: boolean;
  readings: { at: number; temperature: number; humidity: number | null }[];
}

const two = (value: number) => String(value).padStart(2, '0');

const DATE_WRITERS = {
  iso: (d: Date) => `${d.getUTCFullYear()}-${two(d.getUTCMonth() + 1)}-${two(d.getUTCDate())}`,
  dots: (d: Date) => `${two(d.getUTCDate())}.${two(d.getUTCMonth() + 1)}.${d.getUTCFullYear()}`,
  dayFirst: (d: Date) => `${d.getUTCDate()}/${d.getUTCMonth() + 1}/${d.getUTCFullYear()}`,
  monthFirst: (d: Date) => `${two(d.getUTCMonth() + 1)}/${two(d.getUTCDate())}/${d.getUTCFullYear()}`,
  shortYear: (d: Date) => `${two(d.getUTCDate())}-${two(d.getUTCMonth() + 1)}-${two(d.getUTCFullYear() % 100)}`,
  named: (d: Date) =>
    `${d.getUTCDate()} ${['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'][d.getUTCMonth()]} ${d.getUTCFullYear()}`,
};
const TIME_WRITERS = {
  seconds: (d: Date) => `${two(d.getUTCHours())}:${two(d.getUTCMinutes())}:${two(d.getUTCSeconds())}`,
  minutes: (d: Date) => `${two(d.getUTCHours())}:${two(d.getUTCMinutes())}`,
  meridiem: (d: Date) =>
    `${d.getUTCHours() % 12 || 12}:${two(d.getUTCMinutes())}:${two(d.getUTCSeconds())} ${d.getUTCHours() < 12 ? 'AM' : 'PM'}`,
};

const anyFile: fc.Arbitrary<WrittenFile> = fc
  .record({
    start: fc.integer({ min: Date.UTC(2015, 0, 1) / 60_000, max: Date.UTC(2025, 0, 1) / 60_000 }),
    everyMinutes: fc.constantFrom(1, 5, 10, 15, 30, 60, 120, 180, 240, 360, 720),
    days: fc.integer({ min: 2, max: 5 }),
    tenths: fc.array(fc.integer({ min: -250, max: 349 }), { minLength: 30, maxLength: 30 }),
    humidities: fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 30, maxLength: 30 }),
    hasHumidity: fc.boolean(),
    date: fc.constantFrom(...(Object.keys(DATE_WRITERS) as (keyof typeof DATE_WRITERS)[])),
    time: fc.constantFrom(...(Object.keys(TIME_WRITERS) as (keyof typeof TIME_WRITERS)[])),
    delimiter: fc.constantFrom(',', ';', '\t', '|'),
    comma: fc.boolean(),
    quoted: fc.boolean(),
    twoColumns: fc.boolean(),
    rowNumber: fc.boolean(),
    isFahrenheit: fc.boolean(),
    newestFirst: fc.boolean(),
    offset: fc.constantFrom('', '+01:00', '-05:30', 'Z'),
    zone: fc.constantFrom('UTC', 'UTC+10:00', 'UTC-03:30'),
    lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
    prose: fc.boolean(),
    headings: fc.boolean(),
  })
  .map((choice) => {
    const count = Math.max(12, Math.min(150, (choice.days * 1440) / choice.everyMinutes));
    const walls = Array.from({ length: count }, (_, index) => (choice.start + index * choice.everyMinutes) * 60);
    const hasOffset = choice.offset !== '' && choice.time !== 'meridiem';
    const offsetOf = { '': 0, Z: 0, '+01:00': 3600, '-05:30': -19_800 }[choice.offset];
    const zoneOffset = { UTC: 0, 'UTC+10:00': 36_000, 'UTC-03:30': -12_600 }[choice.zone] as number;
    // A comma as decimal mark between commas needs quotes.
    const quoted = choice.quoted || (choice.comma && choice.delimiter === ',');
    const cell = (text: string) => (quoted ? `"${text}"` : text);
    const figure = (value: number) => (choice.comma ? value.toFixed(1).replace('.', ',') : value.toFixed(1));
    const readings = walls.map((wall, index) => ({
      at: wall - (hasOffset ? offsetOf : zoneOffset),
      temperature: (choice.tenths[index % 30] as number) / 10,
      humidity: choice.hasHumidity ? (choice.humidities[index % 30] as number) / 10 : null,
    }));
    const rows = walls.map((wall, index) => {
      const moment = new Date(wall * 1000);
      const date = DATE_WRITERS[choice.date](moment);
      const time = TIME_WRITERS[choice.time](moment) + (hasOffset ? choice.offset : '');
      const { temperature, humidity } = readings[index] as (typeof readings)[number];
      return [
        ...(choice.rowNumber ? [String(index + 1)] : []),
        ...(choice.twoColumns ? [date, time] : [`${date} ${time}`]),
        figure(temperature),
        ...(humidity === null ? [] : [figure(humidity)]),
      ]
        .map(cell)
        .join(choice.delimiter);
    });
    const unit = choice.isFahrenheit ? '°F' : '°C';
    const heading = [
      ...(choice.rowNumber ? ['No.'] : []),
      ...(choice.twoColumns ? ['Date', 'Time'] : ['Date and time']),
      `Temperature ${unit}`,
      ...(choice.hasHumidity ? ['Humidity %'] : []),
    ];
    const above = [
      ...(choice.prose ? ['Seed store logger', `Unit: ${unit}`, ''] : []),
      ...(choice.headings || !choice.prose ? [heading.map(cell).join(choice.delimiter)] : []),
    ];
    return {
      rows: choice.newestFirst ? rows.toReversed() : rows,
      above,
      lineEnd: choice.lineEnd,
      order:
        choice.date === 'monthFirst' ? 'month-day-year' : choice.date === 'iso' ? 'year-month-day' : 'day-month-year',
      zone: hasOffset ? 'file' : choice.zone,
      isFahrenheit: choice.isFahrenheit,
      readings,
    };
  });

const textOf = ({ above, rows, lineEnd }: WrittenFile) => [...above, ...rows, ''].join(lineEnd);
const layoutOf = (file: WrittenFile) => {
  const { dateOrder, zone, ...rest } = guessText(textOf(file)).layout;
  // What the file does not show (a zone, the order within one day) is said by the user.
  if (file.zone === 'file') expect(zone).toBe('file');
  return { ...rest, dateOrder: dateOrder ?? file.order, zone: zone ?? file.zone };
};
const expectedOf = ({ readings, isFahrenheit }: WrittenFile) =>
  readings
    .toSorted((a, b) => a.at - b.at)
    .map(({ at, temperature, humidity }) => [
      new Date(at * 1000).toISOString().replace('.000', ''),
      isFahrenheit ? Math.round(((temperature - 32) / 1.8) * 10_000) / 10_000 : temperature,
      humidity,
    ]);

describe('a logger file', () => {
  it('gives back, from any layout, the instants and values that it was written from', () => {
    fc.assert(
      fc.property(anyFile, fc.integer({ min: 1, max: 5000 }), (file, pieceLength) => {
        const contents = readText(textOf(file), layoutOf(file), pieceLength);
        expect(written(contents)).toEqual(expectedOf(file));
      }),
      { numRuns: 400, seed: 4 },
    );
  });

  it('loses nothing else by rows that are doubled, out of order, foreign or cut in half', () => {
    const trouble = fc.record({
      file: anyFile,
      doubled: fc.array(fc.nat(11), { maxLength: 5 }),
      swap: fc.nat(10),
      foreign: fc.constantFrom('battery low', '*** connected ***', 'Total;12', '""', ';;;'),
      at: fc.nat(11),
      cut: fc.integer({ min: 1, max: 60 }),
    });
    fc.assert(
      fc.property(trouble, ({ file, doubled, swap, foreign, at, cut }) => {
        const layout = layoutOf(file);
        const rows = [...file.rows];
        [rows[swap], rows[swap + 1]] = [rows[swap + 1] as string, rows[swap] as string];
        const more = doubled.map((index) => file.rows[index] as string);
        rows.splice(at, 0, foreign, ...more);
        // The last row again, but only its beginning: it must neither count nor hide the whole one.
        const last = file.rows.at(-1) as string;
        const text = [...file.above, ...rows, last.slice(0, Math.min(cut, last.length - 1))].join(file.lineEnd);
        expect(written(readText(text, layout))).toEqual(expectedOf(file));
      }),
      { numRuns: 300, seed: 4 },
    );
  });

  it('never gives a reading that lies in the future, or two of one instant', () => {
    fc.assert(
      fc.property(anyFile, fc.integer({ min: 0, max: 20 }), (file, years) => {
        const later = textOf(file).replaceAll(/20(1|2)(\d)/g, (year) => String(Number(year) + years));
        const { readings } = readText(later, layoutOf(file));
        expect(readings.atEpochSeconds.every((at) => at <= LATEST)).toBe(true);
        expect(new Set(readings.atEpochSeconds).size).toBe(readings.atEpochSeconds.length);
      }),
      { numRuns: 100, seed: 4 },
    );
  });

  it('counts every row that gave no reading', () => {
    const text =
      'at;t\n2024-03-05 10:00;4,1\nconnected;\n2024-03-05 11:00;\n2024-03-05 11:00;-120\n2024-03-05 12:00;4,2\n';
    const layout = { ...guessText(text).layout, dateOrder: 'year-month-day', zone: 'UTC' } as const;
    const contents = readText(text, layout);
    expect(contents.rows).toBe(5);
    expect(problemCounts(contents)).toEqual({ 'no-time': 1, 'no-value': 1, 'impossible-temperature': 1 });
    expect(contents.problems.map(({ rows }) => rows[0])).toEqual([
      { line: 3, column: 0, text: 'connected;' },
      { line: 4, column: 1, text: '2024-03-05 11:00;' },
      { line: 5, column: 1, text: '-120' },
    ]);
  });
});
