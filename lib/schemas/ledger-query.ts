/** What the address of the ledger says: which lines, and which page of them. Anything unreadable counts as not said. */
import { z } from 'zod';
import { isCalendarDate } from '../domain/calendar/calendar-date';
import { MOVEMENT_REASONS } from '../domain/stock/movement-reasons';
import { SHORT_TEXT_LENGTH } from './limits';

/** Pages beyond this are asked for by machines only. */
const MAX_PAGE = 1_000_000;

/** Next hands a parameter that is given twice as an array: the first counts. */
const first = (value: unknown) => (Array.isArray(value) ? value[0] : value);
const text = (max: number) => z.preprocess(first, z.string().trim().max(max)).catch('');
const day = z.preprocess(first, z.string().refine(isCalendarDate)).catch('');

export const ledgerQuery = z.object({
  /** number of a packet or lot, or words of an accession's names */
  q: text(SHORT_TEXT_LENGTH.max),
  reason: z.preprocess(first, z.enum(['', ...MOVEMENT_REASONS])).catch(''),
  from: day,
  to: day,
  person: text(100),
  crop: text(100),
  /** where the packet lay on the day, in this store or in one inside it */
  store: text(100),
  page: z.preprocess(first, z.coerce.number().int().min(1).max(MAX_PAGE)).catch(1),
});
export type LedgerQuery = z.infer<typeof ledgerQuery>;

/** The ledger of one lot or accession, whole: its address says which page of it, and nothing else. */
export const wholeLedgerQuery = (address: unknown): LedgerQuery =>
  ledgerQuery.parse(ledgerQuery.pick({ page: true }).parse(address));
