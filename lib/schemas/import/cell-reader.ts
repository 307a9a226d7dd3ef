/** Reads the cells of one mapped column: by the column's own conventions first, then by the field's schema. */
import type { z } from 'zod';
import { REPLICATES_TIMES_SEEDS } from '../../domain/spreadsheet/column-kind';
import {
  type DateFormat,
  type DateOrder,
  type DatePrecision,
  decideDateFormat,
  parseDate,
} from '../../domain/spreadsheet/date-format';
import type { ColumnField } from '../../domain/spreadsheet/guess-columns';
import {
  type DecimalMark,
  decideNumberFormat,
  type NumberFormat,
  numberReadings,
  parseNumber,
} from '../../domain/spreadsheet/number-format';
import { type Quantity, toKeptUnit } from '../../domain/spreadsheet/unit-suffix';
import {
  CONTAINER_ADVICE,
  containerFromWords,
  isolationFromWords,
  sharingFromWords,
  treatmentFromWords,
} from './choice-words';

export type CellReading =
  | { ok: true; value: unknown; precision?: DatePrecision; replicates?: number }
  | { ok: false; message: string };

export interface CellReader {
  field: ColumnField;
  /** index of the column, or null when the field has none */
  column: number | null;
  /** the column's heading as the steward wrote it, or the field's label when it has no column */
  heading: string;
  notes: string[];
  read: (cell: string) => CellReading;
}

/** What the whole file shows, or the steward has said, about numbers and dates. */
export interface FileConventions {
  decimalMark: DecimalMark | null;
  dateOrder: DateOrder | null;
  chosenDecimalMark: DecimalMark | null;
  chosenDateOrder: DateOrder | null;
  today: string;
}

// What people put into a number or date cell to say that there is nothing to say.
const NOTHING = /^(?:[-–—?./]+|n\.?\s?[ad]\.?|n\/a|k\.?\s?a\.?|unknown|unbekannt|inconnu|desconocido)$/i;
const FEWEST_FOR_PROPORTIONS = 3;

const UNIT_WORDS: Record<Quantity, string> = {
  grams: 'grams',
  percent: 'percent',
  seeds: 'seeds',
  plants: 'plants',
  number: 'a bare number',
};

function accept(schema: z.ZodType, value: unknown, more: { precision?: DatePrecision } = {}): CellReading {
  const result = schema.safeParse(value);
  if (result.success) return { ok: true, value: result.data, ...more };
  return { ok: false, message: result.error.issues[0]?.message ?? 'This cannot be read.' };
}

function readDate(cell: string, format: DateFormat, schema: z.ZodType, today: string): CellReading {
  const parsed = parseDate(cell, format);
  if (parsed.ok) {
    const { date, precision } = parsed;
    const begins = precision === 'year' ? `${date.slice(0, 4)}-01-01` : `${date.slice(0, 7)}-01`;
    // The middle of a month or year that has begun may lie ahead; what has happened is then kept as today.
    const clipped = precision !== 'day' && date > today && begins <= today ? today : date;
    return accept(schema, clipped, { precision });
  }
  const message = {
    'not-a-date': 'Write a date such as 2019-12-31, 31.12.2019, Dec 2019 or 2019.',
    impossible: 'The calendar has no such day: check day and month.',
    ambiguous: 'Day and month could be either way round, and this column uses both: write it as 2019-12-31.',
  }[parsed.reason];
  return { ok: false, message };
}

function readNumber(
  cell: string,
  format: NumberFormat,
  quantity: Quantity,
  schema: z.ZodType,
  scale: number,
): CellReading {
  const parsed = parseNumber(cell, format, (value) => schema.safeParse(value).success);
  if (!parsed.ok && parsed.reason === 'ambiguous') {
    const [first, second] = parsed.readings;
    const message = `This could be ${second} or ${first}: say whether the file uses decimal commas or points, or write one of these.`;
    return { ok: false, message };
  }
  if (!parsed.ok) {
    return {
      ok: false,
      message: `Write a plain number (${UNIT_WORDS[quantity]}), such as 12, without words around it.`,
    };
  }
  const kept = toKeptUnit(parsed.value, parsed.unit, quantity);
  if (!kept.ok) {
    return {
      ok: false,
      message: `The unit '${parsed.unit}' is not known here: write the number in ${UNIT_WORDS[quantity]}.`,
    };
  }
  return accept(schema, parsed.unit === null ? Number((kept.value * scale).toPrecision(15)) : kept.value);
}

// Spreadsheet programs keep 92 % as 0.92: a column of which every value lies in 0-1 holds proportions.
function holdsProportions(values: readonly string[]): boolean {
  const numbers = values.flatMap((value) => {
    const [reading, another] = numberReadings(value);
    return reading && !another ? [reading] : [];
  });
  return (
    numbers.length >= FEWEST_FOR_PROPORTIONS &&
    numbers.every(({ value, unit }) => unit === null && value >= 0 && value <= 1) &&
    numbers.some(({ value }) => value > 0 && value < 1)
  );
}

function readChoice(key: string, cell: string, schema: z.ZodType): CellReading {
  if (key === 'treatment') return accept(schema, treatmentFromWords(cell));
  if (key === 'sharing') return accept(schema, sharingFromWords(cell));
  if (key === 'container') {
    const container = containerFromWords(cell);
    return container ? { ok: true, value: container } : { ok: false, message: CONTAINER_ADVICE };
  }
  // An isolation that is not understood is kept as not known; check-lots says so and saves the words in the notes.
  return { ok: true, value: isolationFromWords(cell) ?? undefined };
}

/**
 * Makes the reader of one field's column.
 *
 * @param field    the field
 * @param schema   the field's schema from importSchemas
 * @param column   index of its column, or null
 * @param heading  the column's heading
 * @param values   all cells of the column: its conventions are decided over them
 * @param file     conventions of the whole file, for a column that shows none itself
 * @returns a reader; blank cells give undefined, or a problem where the field is required
 * Checked in tests/schemas/import/dry-run.test.ts
 */
export function createCellReader(
  field: ColumnField,
  schema: z.ZodType,
  { column, heading, values }: { column: number | null; heading: string; values: readonly string[] },
  file: FileConventions,
): CellReader {
  const notes: string[] = [];
  const isText = field.kind === 'text' || field.kind === 'code' || field.kind === 'choice';
  const readFilled = readerFor();
  return { field, column, heading, notes, read };

  function read(cell: string): CellReading {
    const text = cell.trim();
    if (text !== '' && (isText || !NOTHING.test(text))) return readFilled(text);
    return field.required ? { ok: false, message: `Fill in: ${field.label}.` } : { ok: true, value: undefined };
  }

  function readerFor(): (text: string) => CellReading {
    const { kind } = field;
    if (kind === 'text' || kind === 'code') return (text) => accept(schema, text);
    if (kind === 'choice') return (text) => readChoice(field.key, text, schema);
    const filled = values.filter((value) => !NOTHING.test(value.trim()));
    if (kind === 'date') {
      const format = decideDateFormat(filled, { hint: file.dateOrder, chosen: file.chosenDateOrder });
      notes.push(...format.notes);
      return (text) => readDate(text, format, schema, file.today);
    }
    const plausible = (value: number) => schema.safeParse(value).success;
    const format = decideNumberFormat(filled, { hint: file.decimalMark, chosen: file.chosenDecimalMark, plausible });
    if (format.note) notes.push(format.note);
    const scale = kind === 'percent' && holdsProportions(filled) ? 100 : 1;
    if (scale === 100) notes.push('Every value lies between 0 and 1, so they were read as proportions: 0.92 is 92 %.');
    return (text) => {
      const times = field.key === 'seedsSown' ? REPLICATES_TIMES_SEEDS.exec(text) : null;
      if (!times) return readNumber(text, format, kind, schema, scale);
      const [replicates, seeds] = [Number(times[1]), Number(times[2])];
      const reading = accept(schema, replicates * seeds);
      return reading.ok ? { ...reading, replicates } : reading;
    };
  }
}
