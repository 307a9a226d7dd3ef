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

/**
 * The condition that all words typed are somewhere in the search text: the matches are gathered from the index that
 * holds that text, because walking a whole table in list order for a rare word takes ten times as long. '%' and '_'
 * stand for themselves.
 *
 * @param table  'LotJudgement' or 'AccessionJudgement'
 * @returns no condition when nothing was typed
 */
export function matching(table: 'LotJudgement' | 'AccessionJudgement', typed: string): Prisma.Sql[] {
  const words = searchWords(typed).map((word) => {
    const pattern = `%${word.replace(/[\\%_]/g, '\\$&')}%`;
    return Prisma.sql`"searchText" LIKE ${pattern} ESCAPE '\\'`;
  });
  if (words.length === 0) return [];
  return [Prisma.sql`rowid IN (SELECT rowid FROM ${Prisma.raw(`"${table}"`)} WHERE ${Prisma.join(words, ' AND ')})`];
}

/** WHERE with all conditions, or nothing. */
export const where = (conditions: Prisma.Sql[]): Prisma.Sql =>
  conditions.length === 0 ? Prisma.empty : Prisma.sql`WHERE ${Prisma.join(conditions, ' AND ')}`;

/** Columns that may be empty. Only these say NULLS LAST: with it SQLite gives up an index over several columns. */
const MAY_BE_EMPTY = new Set(['viabilityMedian', 'testDueOn', 'storeName']);

/**
 * ORDER BY over columns that one index holds in this order, so that a page is read without sorting the table. Rows
 * without a value come last either way; the row's own place in the table settles ties, so that pages do not overlap.
 *
 * @param columns  names written in this program, never typed by anybody
 */
export function orderBy(columns: readonly string[], descending: boolean): Prisma.Sql {
  const terms = columns.map((column) => {
    if (descending) return `"${column}" DESC`;
    return MAY_BE_EMPTY.has(column) ? `"${column}" ASC NULLS LAST` : `"${column}" ASC`;
  });
  return Prisma.raw(`ORDER BY ${[...terms, descending ? 'rowid DESC' : 'rowid'].join(', ')}`);
}
