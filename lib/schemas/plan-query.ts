/** Addresses of planning tests. What cannot be read is left out rather than refused. */
import { z } from 'zod';
import { MOST_TRAYS_AT_ONCE } from './set-trays';

/** 'lot' as often as lots are ticked, and 'lots' with numbers joined by commas; each number once. */
const lotNumbers = z
  .preprocess(
    (value) => (typeof value === 'string' ? value.split(',') : value),
    z.array(z.string().trim().min(1).max(40).catch('')),
  )
  .catch([])
  .transform((numbers) => numbers.filter((number) => number !== ''));

const text = z.preprocess((value) => (Array.isArray(value) ? value[0] : value), z.string().trim().max(200)).catch('');

/**
 * The address of the plan and of setting: which lots are chosen, what is looked for, which group is shown.
 *
 * Checked in tests/schemas/plan-query.test.ts
 */
export const planQuery = z
  .object({
    lot: lotNumbers,
    lots: lotNumbers,
    q: text,
    group: text,
    page: z.coerce.number().int().min(1).max(100_000).catch(1),
  })
  .transform(({ lot, lots, ...query }) => ({
    ...query,
    chosen: [...new Set([...lots, ...lot])].slice(0, MOST_TRAYS_AT_ONCE),
    /** more were ticked than can be set at once */
    tooMany: new Set([...lots, ...lot]).size > MOST_TRAYS_AT_ONCE,
  }));

export type PlanQuery = z.output<typeof planQuery>;

/** The trays that were set: '?trays=T-0204,T-0205'. */
export const traysSetQuery = z
  .object({ trays: lotNumbers })
  .transform(({ trays }) => trays.slice(0, MOST_TRAYS_AT_ONCE));
