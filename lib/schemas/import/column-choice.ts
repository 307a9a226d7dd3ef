import type { ColumnMapping } from '../../domain/spreadsheet/guess-columns';
import { columnMappingSchema } from './import-request';

/** In an address the chosen columns are 'column.<field>=<index>'. */
export const COLUMN_PREFIX = 'column.';

/**
 * Reads the columns that a steward chose from an address.
 *
 * @param parameters  the address's parameters
 * @returns the mapping, or null when none is chosen or it cannot be read
 * Checked in tests/schemas/import/column-choice.test.ts
 */
export function columnChoice(parameters: Record<string, string | string[] | undefined>): ColumnMapping | null {
  const chosen = Object.entries(parameters).filter(([name]) => name.startsWith(COLUMN_PREFIX));
  if (chosen.length === 0) return null;
  const parsed = columnMappingSchema.safeParse(
    Object.fromEntries(chosen.map(([name, value]) => [name.slice(COLUMN_PREFIX.length), value])),
  );
  return parsed.success ? parsed.data : null;
}
