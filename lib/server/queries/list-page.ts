import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { reader } from '../database/connections';
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

/** What a list reads from: the judgements hold everything that it sorts and filters by. */
type JudgementTable = 'LotJudgement' | 'AccessionJudgement';

/** Conditions that the lists of lots and of accessions have in common. */
export function judgementConditions(
  table: JudgementTable,
  { q, crop, action }: { q: string; crop: string; action: string },
): Prisma.Sql[] {
  const all = matching(table, q);
  if (crop) all.push(Prisma.sql`"cropId" = ${crop}`);
  if (action) all.push(Prisma.sql`"action" = ${action}`);
  return all;
}

/**
 * One page of a list: two statements, however many rows there are.
 *
 * @param asked  which page
 * @param sql    the statement behind the list, which begins at an offset
 */
export async function readListPage<Row>(
  table: JudgementTable,
  conditions: Prisma.Sql[],
  asked: number,
  sql: (offset: number) => Prisma.Sql,
): Promise<ListPage<Row>> {
  const [counted] = await reader().$queryRaw<{ total: bigint }[]>`
    SELECT COUNT(*) AS total FROM ${Prisma.raw(`"${table}"`)} ${where(conditions)}`;
  const total = Number(counted?.total ?? 0);
  const { page, pages, offset } = pageOf(asked, total);
  if (total === 0) return { rows: [], total, page, pages };
  return { rows: await reader().$queryRaw<Row[]>(sql(offset)), total, page, pages };
}

/**
 * The condition that all words typed are somewhere in the search text: the matches are gathered from the index that
 * holds that text, because walking a whole table in list order for a rare word takes ten times as long. '%' and '_'
 * stand for themselves.
 *
 * @param table  'LotJudgement' or 'AccessionJudgement'
 * @returns no condition when nothing was typed
 */
export function matching(table: JudgementTable, typed: string): Prisma.Sql[] {
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
