import { readFileSync } from 'node:fs';
import { rowsFromTable } from '../../../lib/domain/reference/parse-printed';

/** Rows of a table copy in lib/domain/reference/published. */
export function publishedRows(name: string): Record<string, string>[] {
  return rowsFromTable(
    readFileSync(new URL(`../../../lib/domain/reference/published/${name}.tsv`, import.meta.url), 'utf8'),
  );
}

/** The printed row name that ends a source: text in the last pair of double quotes. */
export function printedRowName(source: string): string | undefined {
  return /"([^"]+)"$/.exec(source)?.[1];
}
