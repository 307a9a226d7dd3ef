/** Addresses of the list of requests and of the search for lots to share. What cannot be read counts as not said. */
import { z } from 'zod';
import { REQUEST_STATES, type RequestState } from '../domain/stock/request-states';
import { SHORT_TEXT_LENGTH } from './limits';

/** Pages beyond this are asked for by machines only. */
const MAX_PAGE = 1_000_000;
const STATE_KEYS = REQUEST_STATES.map((state) => state.key) as [RequestState, ...RequestState[]];

/** Next hands a parameter that is given twice as an array: the first counts. */
const first = (value: unknown) => (Array.isArray(value) ? value[0] : value);
const text = z.preprocess(first, z.string().trim().max(SHORT_TEXT_LENGTH.max)).catch('');
const page = z.preprocess(first, z.coerce.number().int().min(1).max(MAX_PAGE)).catch(1);

export const requestListQuery = z.object({
  q: text,
  state: z.preprocess(first, z.enum(['', ...STATE_KEYS])).catch(''),
  page,
});
export type RequestListQuery = z.infer<typeof requestListQuery>;

export const lotsToShareQuery = z.object({
  q: text,
  /** 'all': also lots of which nothing can be given away, with the reason */
  show: z.preprocess(first, z.enum(['', 'all'])).catch(''),
  page,
});
export type LotsToShareQuery = z.infer<typeof lotsToShareQuery>;
