import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { searchWords } from '../judging/search-text';

/** Rows on one page of a list. */
export const PAGE_SIZE = 50;

export interface ListPage<Row> {
  rows: Row[];
  total: number;
  /** the page shown: the last one when the address asks for one beyond */
  page: number;
  pages: number;
}

/** Which page to read, given how many rows there are. */
export function pageOf(asked: number, total: number) {
  const pages = Math.max(1, Math.ceil(total / PAGE_SIZE));
  const page = Math.min(asked, pages);
  return { page, pages, offset: (page - 1) * PAGE_SIZE };
}

/** One condition a word: each must be somewhere in the search text. '%' and '_' stand for themselves. */
export function matching(typed: string): Prisma.Sql[] {
  return searchWords(typed).map((word) => {
    const pattern = `%${word.replace(/[\\%_]/g, '\\$&')}%`;
    return Prisma.sql`"searchText" LIKE ${pattern} ESCAPE '\\'`;
  });
}

/** WHERE with all conditions, or nothing. */
export const where = (conditions: Prisma.Sql[]): Prisma.Sql =>
  conditions.length === 0 ? Prisma.empty : Prisma.sql`WHERE ${Prisma.join(conditions, ' AND ')}`;

/**
 * ORDER BY over columns that one index holds in this order, so that a page is read without sorting the table. Rows
 * without a value come last either way; the row's own place in the table settles ties, so that pages do not overlap.
 *
 * @param columns  names written in this program, never typed by anybody
 */
export function orderBy(columns: readonly string[], descending: boolean): Prisma.Sql {
  const direction = descending ? 'DESC' : 'ASC NULLS LAST';
  const tie = descending ? 'rowid DESC' : 'rowid';
  return Prisma.raw(`ORDER BY ${[...columns.map((column) => `"${column}" ${direction}`), tie].join(', ')}`);
}
