/**
 * Counts of germinated seed typed or pasted, a line for each inspection: '3 12' (day, count), '3 12 9 14 11' (a count for
 * each dish), '3,5; 12; -; 14' (day 3.5, the second dish not looked at).
 */
import { formNumber } from '../field-schemas';
import { SEED_COUNT } from '../limits';
import { type Read, writtenLines } from './written-lines';

export interface DailyCounts {
  /** dishes, the same number in every line */
  dishes: number;
  lines: {
    /** of the text, from 1, to be named in messages */
    number: number;
    day: number;
    /** null: this dish was not looked at */
    counts: (number | null)[];
  }[];
}

/** More inspections and dishes than a bench has; a data logger's file is not for this box. */
const MOST_INSPECTIONS = 200;
export const MOST_DISHES = 20;
/** Ten years: beyond it somebody typed a date. Hours fit as well, for those who count by the hour. */
const LAST_DAY = 100_000;

const NOT_LOOKED_AT = /^[-–—]?$/;

/**
 * Reads counts by day.
 *
 * Cells are parted by tabs or semicolons where a line has any; else by commas, if each stands before a blank or the line has
 * no blank; else by blanks. A comma that parts nothing is a decimal comma. A first line that begins with a word is taken for
 * a heading.
 *
 * @param text  see the examples above; empty lines are passed over
 * @returns the lines in order, or what is wrong, naming the line
 * Checked in tests/schemas/daily-counts.test.ts
 */
export function readDailyCounts(text: string): Read<DailyCounts> {
  const written = writtenLines(text).map(({ line, number }) => ({ cells: cellsOf(line), number }));
  if (written[0] && /^\p{L}/u.test(written[0].cells[0] ?? '')) written.shift();
  if (written.length === 0) return refuse('Write a line for each inspection: the day, then the seeds that germinated.');
  if (written.length > MOST_INSPECTIONS) return refuse(`Write at most ${MOST_INSPECTIONS} inspections.`);

  const dishes = (written[0]?.cells.length ?? 1) - 1;
  const lines: DailyCounts['lines'] = [];
  let dayBefore = Number.NEGATIVE_INFINITY;
  for (const { cells, number } of written) {
    const [dayText = '', ...countTexts] = cells;
    const day = numberIn(dayText);
    if (day === null)
      return refuse(`Line ${number}: '${dayText}' is not a day. Write the day as a number, then the counts.`);
    if (!(day >= 0 && day <= LAST_DAY))
      return refuse(`Line ${number}: write a day from 0 (the sowing) to ${LAST_DAY}.`);
    if (countTexts.length === 0) return refuse(`Line ${number}: a count is missing behind day ${day}.`);
    if (countTexts.length > MOST_DISHES)
      return refuse(`Line ${number}: write counts of at most ${MOST_DISHES} dishes.`);
    if (countTexts.length !== dishes) {
      return refuse(
        `Line ${number}: ${counts(countTexts.length)} here and ${dishes} in the first line. Write - for a dish not looked at.`,
      );
    }
    if (day <= dayBefore)
      return refuse(`Line ${number}: day ${day} must come after day ${dayBefore} of the line before.`);
    const found: (number | null)[] = [];
    for (const countText of countTexts) {
      if (NOT_LOOKED_AT.test(countText)) {
        found.push(null);
        continue;
      }
      const count = numberIn(countText);
      if (count === null || !Number.isInteger(count) || count < 0 || count > SEED_COUNT.max) {
        return refuse(
          `Line ${number}: '${countText}' is not a count. Write whole seeds, or - for a dish not looked at.`,
        );
      }
      if (day === 0 && count > 0) return refuse(`Line ${number}: nothing can have germinated on day 0, the sowing.`);
      found.push(count);
    }
    lines.push({ number, day, counts: found });
    dayBefore = day;
  }
  return { ok: true, value: { dishes, lines } };
}

function cellsOf(line: string): string[] {
  // 'day 3: 12' is how a notebook has it.
  const plain = line
    .trim()
    .replace(/^days?\s+(?=\d)/i, '')
    .replace(/:\s*/, ' ');
  if (plain.includes('\t')) return parted(line.replace(/^\s+(?=\S)/, '').replace(/[ \r]+$/, ''), '\t');
  if (plain.includes(';')) return parted(plain, ';');
  if (/,\s/.test(plain)) return parted(plain, /,\s+/);
  if (plain.includes(',') && !/\s/.test(plain)) return parted(plain, ',');
  return parted(plain, /\s+/);
}

const parted = (line: string, at: string | RegExp) => line.split(at).map((cell) => cell.trim());
const counts = (number: number) => (number === 1 ? '1 count' : `${number} counts`);
const refuse = (message: string) => ({ ok: false as const, message });

function numberIn(text: string): number | null {
  const number = formNumber(text);
  return typeof number === 'number' && Number.isFinite(number) ? number : null;
}
