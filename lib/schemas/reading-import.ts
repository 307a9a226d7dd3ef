/** Input and stored forms of importing a logger's file: what is sent, how the file is laid out, what was found in it. */
import { z } from 'zod';
import {
  DATE_ORDERS,
  type LoggerDelimiter,
  type LoggerLayout,
  TEMPERATURE_UNITS,
  ZONE_IN_THE_FILE,
} from '../domain/logger/logger-layout';
import { PROBLEM_KINDS } from '../domain/logger/logger-problems';
import { isZone } from '../domain/logger/zone-clock';
import { choice, idOf } from './choice-field';
import { blankToUndefined } from './field-schemas';

/** A logger's memory of a million rows is about 30 MB. */
export const MAX_LOGGER_FILE_BYTES = 32 * 1024 * 1024;
const MOST_COLUMNS = 200;
const MOST_LINES = 10_000_000;

export const uploadReadingsSchema = z.object({
  storeId: idOf('store'),
  fileName: z.preprocess(
    blankToUndefined,
    z.string({ error: 'Choose a file.' }).max(200, 'Give the file a shorter name.'),
  ),
  bytes: z
    .instanceof(Uint8Array, { error: 'Choose a file.' })
    .refine((bytes) => bytes.length > 0, 'This file is empty.')
    .refine(
      (bytes) => bytes.length <= MAX_LOGGER_FILE_BYTES,
      `This file is larger than ${MAX_LOGGER_FILE_BYTES / 1024 / 1024} MB. Export fewer months at a time.`,
    ),
});

/** A form cannot send a tab or a space as a choice, so that delimiters go by name. */
export const DELIMITER_NAMES = ['comma', 'semicolon', 'tab', 'bar', 'spaces'] as const;
const DELIMITERS: Record<(typeof DELIMITER_NAMES)[number], LoggerDelimiter> = {
  comma: ',',
  semicolon: ';',
  tab: '\t',
  bar: '|',
  spaces: ' ',
};
export const delimiterName = (delimiter: LoggerDelimiter) =>
  DELIMITER_NAMES.find((name) => DELIMITERS[name] === delimiter) ?? 'comma';

const whole = (max: number, what: string) =>
  z.preprocess(
    blankToUndefined,
    z.coerce
      .number({ error: `Choose the ${what}.` })
      .int()
      .min(0, `Choose the ${what}.`)
      .max(max),
  );
const column = (what: string) => whole(MOST_COLUMNS, what);
const optionalColumn = z.preprocess(
  (value) => (value === '' || value === undefined ? null : value),
  z.coerce.number().int().min(0).max(MOST_COLUMNS).nullable(),
);

const layoutFields = {
  delimiter: choice(DELIMITER_NAMES, 'mark between cells').transform((name) => DELIMITERS[name]),
  firstLine: whole(MOST_LINES, 'line of the first reading').pipe(z.number().min(1, 'Lines count from 1.')),
  dateColumn: column('column of the date'),
  timeColumn: optionalColumn,
  temperatureColumn: column('column of the temperature'),
  humidityColumn: optionalColumn,
  dateOrder: choice(DATE_ORDERS, 'order of day and month'),
  temperatureUnit: choice(TEMPERATURE_UNITS, 'unit'),
  zone: z.preprocess(
    blankToUndefined,
    z
      .string({ error: "Choose the time zone of the logger's clock." })
      .max(60)
      .refine((zone) => zone === ZONE_IN_THE_FILE || isZone(zone), 'This is no time zone: choose one from the list.'),
  ),
};

export const importReadingsSchema = z.object({ importId: whole(Number.MAX_SAFE_INTEGER, 'file'), ...layoutFields });

export type LayoutFieldName = keyof typeof layoutFields;

/**
 * What an address says of a layout, field by field: what it leaves out or has wrong is left to the guess.
 *
 * Checked in tests/schemas/reading-import.test.ts
 */
export function layoutFromAddress(parameters: Record<string, string | string[] | undefined>): Partial<LoggerLayout> {
  const chosen: Partial<Record<LayoutFieldName, unknown>> = {};
  for (const [name, schema] of Object.entries(layoutFields) as [LayoutFieldName, z.ZodType][]) {
    if (parameters[name] === undefined) continue;
    const parsed = schema.safeParse(parameters[name]);
    if (parsed.success) chosen[name] = parsed.data;
  }
  return chosen as Partial<LoggerLayout>;
}

export const takeBackReadingsSchema = z.object({ importId: whole(Number.MAX_SAFE_INTEGER, 'file') });

/** ReadingImport.layout */
export const storedLayoutSchema = z.object({
  delimiter: z.enum([',', ';', '\t', '|', ' ']),
  firstLine: z.number(),
  dateColumn: z.number(),
  timeColumn: z.number().nullable(),
  temperatureColumn: z.number(),
  humidityColumn: z.number().nullable(),
  dateOrder: z.enum(DATE_ORDERS),
  temperatureUnit: z.enum(TEMPERATURE_UNITS),
  zone: z.string(),
});

/** ReadingImport.report: instants are seconds since 1970 UTC. */
export const readingReportSchema = z.object({
  rows: z.number(),
  readings: z.number(),
  firstAt: z.number().nullable(),
  lastAt: z.number().nullable(),
  newestFirst: z.boolean(),
  usualIntervalSeconds: z.number().nullable(),
  gaps: z.object({
    count: z.number(),
    totalSeconds: z.number(),
    longest: z.array(z.object({ from: z.number(), to: z.number() })),
  }),
  problems: z.array(
    z.object({
      kind: z.enum(PROBLEM_KINDS),
      count: z.number(),
      rows: z.array(z.object({ line: z.number(), column: z.number().nullable(), text: z.string() })),
    }),
  ),
  /** what came of it beside the readings that the store had already */
  added: z.number(),
  alreadyThere: z.number(),
  /** of these, how many said something else: what was there stays */
  saidOtherwise: z.number(),
});
export type ReadingReport = z.infer<typeof readingReportSchema>;
