/** What a column's cells look like, set against what a field holds. */
import { decideDateFormat, parseDate } from './date-format';
import { numberReadings } from './number-format';

export type ColumnKind = 'text' | 'code' | 'choice' | 'date' | 'grams' | 'percent' | 'seeds' | 'plants' | 'number';

/** '4 x 50': replicates times seeds, as stewards write how many were sown. */
export const REPLICATES_TIMES_SEEDS = /^(\d{1,3})\s*[x×*]\s*(\d{1,5})$/i;

const isNumber = (text: string) => numberReadings(text).length > 0;

/**
 * The share of a column's cells that a field of this kind could hold.
 *
 * @param values  cells of the column; blanks are passed over
 * @param kind    what the field holds
 * @returns a proportion 0-1, or null when every cell is blank; texts always fit
 * Checked in tests/domain/spreadsheet/guess-columns.test.ts
 */
export function shareThatFits(values: readonly string[], kind: ColumnKind): number | null {
  const filled = values.map((value) => value.trim()).filter((value) => value !== '');
  if (filled.length === 0) return null;
  const share = (test: (value: string) => boolean) => filled.filter(test).length / filled.length;
  switch (kind) {
    case 'date': {
      const format = decideDateFormat(filled);
      return share((value) => parseDate(value, format).ok);
    }
    case 'percent':
      return share((value) => numberReadings(value).some((reading) => reading.value >= 0 && reading.value <= 100));
    case 'seeds':
      return share((value) => (isNumber(value) && !value.includes('%')) || REPLICATES_TIMES_SEEDS.test(value));
    case 'grams':
      return share((value) => isNumber(value) && !value.includes('%'));
    case 'plants':
    case 'number':
      return share(isNumber);
    default:
      return 1;
  }
}
