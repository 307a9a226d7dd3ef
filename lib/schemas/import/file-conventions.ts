/** What a file as a whole shows about its decimal mark and the order of its dates, for columns that show nothing. */
import { type DateOrder, decideDateFormat } from '../../domain/spreadsheet/date-format';
import type { ColumnField } from '../../domain/spreadsheet/guess-columns';
import { type DecimalMark, decideNumberFormat } from '../../domain/spreadsheet/number-format';

const NUMBER_KINDS = new Set(['grams', 'percent', 'seeds', 'plants', 'number']);

// Only what every column that proves something agrees on is a convention of the file.
function agreed<Value>(found: Value[]): Value | null {
  const [first] = found;
  return first !== undefined && found.every((value) => value === first) ? first : null;
}

/**
 * Looks for conventions that the file's columns prove.
 *
 * @param columns  the mapped columns with their fields and all their cells
 * @returns the decimal mark and the date order, each null when no column proves one or two columns contradict
 * Checked in tests/schemas/import/dry-run.test.ts
 */
export function findFileConventions(columns: readonly { field: ColumnField; values: readonly string[] }[]): {
  decimalMark: DecimalMark | null;
  dateOrder: DateOrder | null;
} {
  const marks: DecimalMark[] = [];
  const orders: DateOrder[] = [];
  for (const { field, values } of columns) {
    if (NUMBER_KINDS.has(field.kind)) {
      const whole = field.kind === 'seeds' || field.kind === 'plants' || field.kind === 'number';
      const format = decideNumberFormat(values, whole ? { plausible: Number.isInteger } : {});
      if (format.basis === 'proved' && format.decimalMark) marks.push(format.decimalMark);
    }
    if (field.kind === 'date') {
      const format = decideDateFormat(values);
      if (format.basis === 'proved' && format.order) orders.push(format.order);
    }
  }
  return { decimalMark: agreed(marks), dateOrder: agreed(orders) };
}
