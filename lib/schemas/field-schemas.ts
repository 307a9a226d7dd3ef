/**
 * Field schemas that forms, files and the API share, composed from lib/schemas/limits. Each takes what a form sends
 * (text, blank text, null) or an already typed value, and says in plain words what to write when it refuses.
 *
 * Blank text becomes undefined *before* anything else, so that an empty box is never read as 0. Every schema here is
 * for a field that must be filled in; wrap it in `optionalField` for one that may stay empty.
 */
import { z } from 'zod';
import { isCalendarDate } from '../domain/calendar/calendar-date';
import { numberReadings } from '../domain/spreadsheet/number-format';
import {
  EARLIEST_DATE,
  LABEL_CODE_LENGTH,
  LONG_TEXT_LENGTH,
  MOISTURE_PERCENT,
  PLANT_COUNT,
  REPLICATE_COUNT,
  SEED_COUNT,
  SHORT_TEXT_LENGTH,
  THOUSAND_SEED_WEIGHT_G,
  WEIGHT_G,
} from './limits';

const FILL_IN = 'Fill this in.';

/**
 * Turns a blank form value into undefined and trims other text; anything that is not text passes unchanged.
 *
 * @param value  what the form sent
 * @returns undefined for null and for text of spaces only
 * Checked in tests/schemas/field-schemas.test.ts
 */
export function blankToUndefined(value: unknown): unknown {
  if (value === null) return undefined;
  if (typeof value !== 'string') return value;
  const trimmed = value.trim();
  return trimmed === '' ? undefined : trimmed;
}

/**
 * Makes a field one that may be left empty.
 *
 * @param schema  any schema of this file
 * @returns a schema that gives undefined for a blank or missing value and otherwise what `schema` gives
 * Checked in tests/schemas/field-schemas.test.ts
 */
export function optionalField<Schema extends z.ZodType>(schema: Schema) {
  return z.preprocess(blankToUndefined, schema.optional()).optional();
}

/**
 * Reads a number from a form: '4.5', '4,5', '1 200', '1.200,5'. A point is a decimal mark, as number boxes of browsers
 * send it; '1,200' could be two numbers and is left as text, so that the schema refuses it.
 *
 * @param value  what the form sent
 * @param unit   the field's own unit, which may stand behind the number; any other unit is refused
 * @returns a number, undefined for blank, or the value unchanged when it cannot be read
 * Checked in tests/schemas/field-schemas.test.ts
 */
export function formNumber(value: unknown, unit = ''): unknown {
  const filled = blankToUndefined(value);
  if (typeof filled !== 'string') return filled;
  const readings = numberReadings(filled).filter((reading) => reading.unit === null || reading.unit === unit);
  const [first, second] = readings;
  if (!first) return filled;
  if (!second) return first.value;
  return first.decimalMark === '.' ? first.value : filled;
}

function refuseNumber(issue: { input?: unknown }): string {
  if (issue.input === undefined) return FILL_IN;
  const [first, second] = typeof issue.input === 'string' ? numberReadings(issue.input) : [];
  if (first && second) return `This could be ${second.value} or ${first.value}: write one of these, without a comma.`;
  return 'Write a number, such as 12 or 4.5.';
}

/**
 * A number between two bounds, both allowed.
 *
 * @param limits.min, limits.max  bounds in the field's own unit
 * @param unit  the unit as said in messages, such as 'g' or '%'; '' for none
 * @returns a schema giving a finite number; text is read with decimal point or decimal comma
 * Checked in tests/schemas/field-schemas.test.ts
 */
export function numberBetween(limits: { min: number; max: number }, unit: string) {
  const outside = `Write a number between ${limits.min} and ${limits.max}${unit === '' ? '' : ` ${unit}`}.`;
  const number = z.number({ error: refuseNumber }).min(limits.min, outside).max(limits.max, outside);
  return z.preprocess((value) => formNumber(value, unit), number);
}

/**
 * A whole number between two bounds, both allowed.
 *
 * @param limits.min, limits.max  bounds, whole
 * @param things  what is counted, in the plural, as said in messages: 'seeds'
 * @returns a schema giving an integer
 * Checked in tests/schemas/field-schemas.test.ts
 */
export function countBetween(limits: { min: number; max: number }, things: string) {
  const outside = `Write a number of ${things} between ${limits.min} and ${limits.max}.`;
  const number = z
    .number({ error: refuseNumber })
    .min(limits.min, outside)
    .max(limits.max, outside)
    .refine(Number.isInteger, `Write a whole number of ${things}.`);
  return z.preprocess((value) => formNumber(value), number);
}

/**
 * Text of limited length.
 *
 * @param max  most characters allowed after trimming
 * @returns a schema giving trimmed text that is not empty
 * Checked in tests/schemas/field-schemas.test.ts
 */
export function textUpTo(max: number) {
  const refuse = (issue: { input?: unknown }) => (issue.input === undefined ? FILL_IN : 'Write text here.');
  return z.preprocess(blankToUndefined, z.string({ error: refuse }).max(max, `Shorten this to ${max} characters.`));
}

export const shortText = textUpTo(SHORT_TEXT_LENGTH.max);
export const longText = textUpTo(LONG_TEXT_LENGTH.max);

// Labels are read aloud, typed on phones and printed as codes: letters of any script, digits and four marks.
const LABEL_CODE = /^[\p{L}\p{M}\p{N}][\p{L}\p{M}\p{N}\-./ ]*$/u;

function labelCode(name: string) {
  return textUpTo(LABEL_CODE_LENGTH.max)
    .refine((code) => LABEL_CODE.test(code), {
      error: `Use letters, digits, spaces and - . / in the ${name}, beginning with a letter or digit.`,
    })
    .transform((code) => code.replace(/ {2,}/g, ' '));
}

export const accessionNumber = labelCode('accession number');
export const lotNumber = labelCode('lot number');

const DATE_ADVICE = 'Write a date that exists, such as 2019-12-31.';
const TOO_EARLY = `Write a date from ${EARLIEST_DATE} on.`;

/** A calendar date 'YYYY-MM-DD' from 1900 on; it may lie in the future (a plan). */
export const calendarDate = z.preprocess(
  blankToUndefined,
  z
    .string({ error: (issue) => (issue.input === undefined ? FILL_IN : DATE_ADVICE) })
    .refine(isCalendarDate, { error: DATE_ADVICE, abort: true })
    .refine((date) => date >= EARLIEST_DATE, TOO_EARLY),
);

/**
 * A calendar date for something that has happened.
 *
 * @param today  'YYYY-MM-DD' at the bank; the schema has no clock of its own
 * @returns a schema giving a date from 1900-01-01 to today
 * @throws RangeError when today is not a calendar date
 * Checked in tests/schemas/field-schemas.test.ts
 */
export function pastOrTodayDate(today: string) {
  if (!isCalendarDate(today)) throw new RangeError(`pastOrTodayDate: today must be YYYY-MM-DD, got ${today}`);
  return calendarDate.refine((date) => date <= today, `This date is after today (${today}): check the year.`);
}

/** A share as percent, 0-100, kept as percent. */
export const percent = numberBetween({ min: 0, max: 100 }, '%');

/** A share typed as percent, kept as a proportion 0-1: '85' gives 0.85. */
export const proportionFromPercent = percent.transform((value) => value / 100);

/** A share that is already a proportion, 0-1. */
export const proportion = numberBetween({ min: 0, max: 1 }, '');

export const moisturePercent = numberBetween(MOISTURE_PERCENT, '%');
export const thousandSeedWeightG = numberBetween(THOUSAND_SEED_WEIGHT_G, 'g');
export const positiveWeightG = numberBetween(WEIGHT_G, 'g');

/** Seeds counted, 0 allowed (none germinated). */
export const seedCount = countBetween({ min: 0, max: SEED_COUNT.max }, 'seeds');

/** Seeds where none would make no sense (sown, put into a packet). */
export const positiveSeedCount = countBetween({ min: 1, max: SEED_COUNT.max }, 'seeds');

export const plantCount = countBetween({ min: 1, max: PLANT_COUNT.max }, 'plants');
export const replicateCount = countBetween({ min: 1, max: REPLICATE_COUNT.max }, 'replicates');
