/**
 * What a list's address says: search words, order, page and filters, as GET parameters. Anything unreadable counts as
 * not said, so that an old or mistyped address still opens the list.
 */
import { z } from 'zod';
import { SHORT_TEXT_LENGTH } from './limits';

/** Pages beyond this are asked for by machines only. */
const MAX_PAGE = 1_000_000;

/** Next hands a parameter that is given twice as an array: the first counts. */
const first = (value: unknown) => (Array.isArray(value) ? value[0] : value);

const text = (max: number) => z.preprocess(first, z.string().trim().max(max)).catch('');

const page = z.preprocess(first, z.coerce.number().int().min(1).max(MAX_PAGE)).catch(1);

/** 'name' is ascending, '-name' descending. */
function sort<const Key extends string>(keys: readonly Key[], standard: Key | `-${Key}`) {
  const both = keys.flatMap((key) => [key, `-${key}` as const]) as (Key | `-${Key}`)[];
  return z.preprocess(first, z.enum(both as [Key | `-${Key}`, ...(Key | `-${Key}`)[]])).catch(standard as never);
}

const ACTIONS = ['regrow', 'test-first', 'leave'] as const;
const action = z.preprocess(first, z.enum(['', ...ACTIONS])).catch('');

export const LOT_SORTS = ['lot', 'accession', 'crop', 'harvest', 'store', 'alive', 'seeds', 'due', 'urgency'] as const;
export type LotSort = (typeof LOT_SORTS)[number];

export const lotListQuery = z.object({
  q: text(SHORT_TEXT_LENGTH.max),
  sort: sort(LOT_SORTS, 'accession'),
  page,
  crop: text(100),
  store: text(100),
  action,
});
export type LotListQuery = z.infer<typeof lotListQuery>;

export const ACCESSION_SORTS = ['number', 'accession', 'crop', 'lots', 'alive', 'seeds', 'urgency'] as const;
export type AccessionSort = (typeof ACCESSION_SORTS)[number];

export const accessionListQuery = z.object({
  q: text(SHORT_TEXT_LENGTH.max),
  sort: sort(ACCESSION_SORTS, 'accession'),
  page,
  crop: text(100),
  action,
});
export type AccessionListQuery = z.infer<typeof accessionListQuery>;

export const CROP_SORTS = ['name', 'scientific', 'family', 'accessions'] as const;
export type CropSort = (typeof CROP_SORTS)[number];

export const cropListQuery = z.object({
  q: text(SHORT_TEXT_LENGTH.max),
  sort: sort(CROP_SORTS, 'name'),
  page,
  family: text(100),
});
export type CropListQuery = z.infer<typeof cropListQuery>;

/** The column and direction of a sort parameter. */
export function readSort<Key extends string>(value: Key | `-${Key}`): { key: Key; descending: boolean } {
  const descending = value.startsWith('-');
  return { key: (descending ? value.slice(1) : value) as Key, descending };
}

/** The packets on a store's page. */
export const storeQuery = z.object({ page });
