/**
 * Numbers as people type them: decimal comma or point, thousands set apart by point, comma, space or apostrophe,
 * perhaps with a percent sign or a unit behind.
 *
 * The idea: a text has one or two possible readings. '4,5' can only be 4.5; '1.200' may be 1200 or 1.2. Which mark a
 * column uses is decided by those of its values that have a single reading. Nothing is guessed: a value that stays
 * open is reported, because the two readings differ a thousandfold.
 */

export type DecimalMark = '.' | ',';

export interface NumberReading {
  value: number;
  /** the decimal mark that this reading supposes; null when it would be the same with either */
  decimalMark: DecimalMark | null;
  /** what stood behind the number ('g', '%', 'seeds'), or null */
  unit: string | null;
}

export interface NumberFormat {
  /** null when it is not settled: then only values with a single reading can be read */
  decimalMark: DecimalMark | null;
  /** proved: by values of the column; chosen: by the steward; hinted: by the rest of the file; mixed: it contradicts itself */
  basis: 'proved' | 'chosen' | 'hinted' | 'mixed' | 'ambiguous' | 'no-marks';
  /** how many values could be read in two ways */
  ambiguousCount: number;
  /** one sentence for the steward, or null when there is nothing to say */
  note: string | null;
}

export type ParsedNumber =
  | { ok: true; value: number; unit: string | null }
  | { ok: false; reason: 'not-a-number' }
  | { ok: false; reason: 'ambiguous'; readings: [number, number] };

// A number longer than this is no number that a seed bank writes; the bound also keeps the patterns cheap.
const MAX_LENGTH = 60;

const EXPONENT = /^([+-]?\d+(?:[.,]\d+)?)[eE]([+-]?\d{1,3})$/;
const NUMBER_THEN_UNIT = /^([+-]?)([\d.,'’\s]*\d)\s*(.*)$/u;
const UNIT = /^(?:%|‰|%?\s?[\p{L}µ][\p{L}µ. ]{0,19})$/u;
const WHOLE = /^\d+$/;
const ONE_MARK = /^(\d*)([.,])(\d+)$/;
const GROUPED_BY_SPACE = /^\d{1,3}([\s'’])\d{3}(?:\1\d{3})*(?:([.,])(\d+))?$/;
const GROUPED_TWICE = /^[1-9]\d{0,2}([.,])\d{3}(?:\1\d{3})+$/;
const GROUPED_WITH_DECIMALS = /^[1-9]\d{0,2}([.,])\d{3}(?:\1\d{3})*([.,])(\d+)$/;

const otherMark = (mark: DecimalMark): DecimalMark => (mark === '.' ? ',' : '.');

function readBody(body: string): { value: number; decimalMark: DecimalMark | null }[] {
  if (WHOLE.test(body)) return [{ value: Number(body), decimalMark: null }];

  const one = ONE_MARK.exec(body);
  if (one) {
    const [, whole = '', mark, decimals = ''] = one;
    const asDecimal = { value: Number(`${whole || '0'}.${decimals}`), decimalMark: mark as DecimalMark };
    // Three digits behind the mark and one to three before, not starting with 0, may just as well be thousands.
    const mayBeThousands = decimals.length === 3 && whole.length >= 1 && whole.length <= 3 && !whole.startsWith('0');
    if (!mayBeThousands) return [asDecimal];
    return [asDecimal, { value: Number(whole + decimals), decimalMark: otherMark(mark as DecimalMark) }];
  }

  const bySpace = GROUPED_BY_SPACE.exec(body);
  if (bySpace) {
    const mark = (bySpace[2] as DecimalMark | undefined) ?? null;
    const [whole = '', decimals = '0'] = mark ? body.split(mark) : [body];
    return [{ value: Number(`${whole.replace(/\D/g, '')}.${decimals}`), decimalMark: mark }];
  }

  const twice = GROUPED_TWICE.exec(body);
  if (twice) return [{ value: Number(body.replace(/\D/g, '')), decimalMark: otherMark(twice[1] as DecimalMark) }];

  const both = GROUPED_WITH_DECIMALS.exec(body);
  if (both && both[1] !== both[2]) {
    const mark = both[2] as DecimalMark;
    const [whole = '', decimals = ''] = body.split(mark);
    return [{ value: Number(`${whole.replace(/\D/g, '')}.${decimals}`), decimalMark: mark }];
  }
  return [];
}

/**
 * Every number that a text could mean.
 *
 * @param text  a cell, with or without a sign, thousands separators, percent sign or unit
 * @returns none when it is not a number, one when it is clear, two when the mark could be decimal or thousands
 * Checked in tests/domain/spreadsheet/number-format.test.ts (examples and round trips).
 */
export function numberReadings(text: string): NumberReading[] {
  const trimmed = text.trim().replace(/^[−–]/u, '-');
  if (trimmed === '' || trimmed.length > MAX_LENGTH) return [];

  const exponent = EXPONENT.exec(trimmed);
  if (exponent) {
    const [, mantissa = '', power = ''] = exponent;
    const value = Number(`${mantissa.replace(',', '.')}e${power}`);
    const mark = mantissa.includes(',') ? ',' : mantissa.includes('.') ? '.' : null;
    return Number.isFinite(value) ? [{ value, decimalMark: mark, unit: null }] : [];
  }

  const parts = NUMBER_THEN_UNIT.exec(trimmed);
  if (!parts) return [];
  const [, sign = '', body = '', behind = ''] = parts;
  if (behind !== '' && !UNIT.test(behind)) return [];
  const factor = sign === '-' ? -1 : 1;
  const unit = behind === '' ? null : behind.trim();
  // "+ 0" turns -0 into 0.
  return readBody(body).map(({ value, decimalMark }) => ({ value: factor * value + 0, decimalMark, unit }));
}

function plausibleReadings(text: string, plausible?: (value: number) => boolean): NumberReading[] {
  const readings = numberReadings(text);
  if (readings.length < 2 || !plausible) return readings;
  const kept = readings.filter((reading) => plausible(reading.value));
  return kept.length === 0 ? readings : kept;
}

/**
 * Decides over a whole column which decimal mark it uses.
 *
 * @param values     the column's cells; blanks and cells that are no numbers are passed over
 * @param options.hint       what the rest of the file uses; taken only when the column itself proves nothing
 * @param options.chosen     what the steward says; taken where the column proves nothing or contradicts itself
 * @param options.plausible  which values can occur (a moisture is at most 60, a count is whole): it rules out readings
 * @returns the mark, on what it rests, and a sentence for the steward when it is not proved by the column
 * Checked in tests/domain/spreadsheet/number-format.test.ts
 */
export function decideNumberFormat(
  values: readonly string[],
  options: { hint?: DecimalMark | null; chosen?: DecimalMark | null; plausible?: (value: number) => boolean } = {},
): NumberFormat {
  let point = 0;
  let comma = 0;
  let ambiguousCount = 0;
  let example = '';
  for (const value of values) {
    const readings = plausibleReadings(value, options.plausible);
    if (readings.length > 1) {
      ambiguousCount += 1;
      example ||= value.trim();
    } else if (readings[0]?.decimalMark === '.') point += 1;
    else if (readings[0]?.decimalMark === ',') comma += 1;
  }

  const isOpen = (point > 0 && comma > 0) || (point === 0 && comma === 0 && ambiguousCount > 0);
  if (isOpen && options.chosen) return { decimalMark: options.chosen, basis: 'chosen', ambiguousCount, note: null };
  if (point > 0 && comma > 0) {
    const open = ambiguousCount === 0 ? '' : ` Values such as '${example}' could mean two numbers and are not read.`;
    const note = `Both decimal points (${point}) and decimal commas (${comma}) occur in this column.${open}`;
    return { decimalMark: null, basis: 'mixed', ambiguousCount, note };
  }
  if (point > 0 || comma > 0) {
    return { decimalMark: point > 0 ? '.' : ',', basis: 'proved', ambiguousCount, note: null };
  }
  if (ambiguousCount === 0) return { decimalMark: null, basis: 'no-marks', ambiguousCount, note: null };
  if (options.hint) {
    const name = options.hint === ',' ? 'comma' : 'point';
    const note = `'${example}' was read with a decimal ${name}, as in the rest of the file; this column alone does not show it.`;
    return { decimalMark: options.hint, basis: 'hinted', ambiguousCount, note };
  }
  const note = `'${example}' could be thousands or decimals, and nothing in the file shows which.`;
  return { decimalMark: null, basis: 'ambiguous', ambiguousCount, note };
}

/**
 * Reads one cell by its column's convention.
 *
 * @param text    the cell, not blank
 * @param format  from decideNumberFormat over the whole column
 * @param plausible  the same test that was given to decideNumberFormat
 * @returns the number and its unit; or that it is not a number; or that it stays open, with both readings.
 *   A value with one possible reading is read even in a column of the other convention: '4.5' is 4.5.
 * Checked in tests/domain/spreadsheet/number-format.test.ts
 */
export function parseNumber(text: string, format: NumberFormat, plausible?: (value: number) => boolean): ParsedNumber {
  const all = numberReadings(text);
  const [first, second] = all;
  if (!first) return { ok: false, reason: 'not-a-number' };
  if (!second) return { ok: true, value: first.value, unit: first.unit };
  if (format.decimalMark) {
    const chosen = first.decimalMark === format.decimalMark ? first : second;
    return { ok: true, value: chosen.value, unit: chosen.unit };
  }
  const [kept, another] = plausibleReadings(text, plausible);
  if (kept && !another) return { ok: true, value: kept.value, unit: kept.unit };
  return { ok: false, reason: 'ambiguous', readings: [first.value, second.value] };
}
