import { z } from 'zod';

/** The address of the list of tests: filters and pages. What cannot be read is left out rather than refused. */
export const germinationQuerySchema = z.object({
  crop: z.string().max(60).optional().catch(undefined),
  q: z.string().trim().max(200).optional().catch(undefined),
  page: z.coerce.number().int().min(1).max(100_000).default(1).catch(1),
  /** page of the tests due */
  due: z.coerce.number().int().min(1).max(100_000).default(1).catch(1),
});

export type GerminationQuery = z.output<typeof germinationQuerySchema>;

/** Most replicates that the entry form offers: sixteen of 25 make the full test of 400 seeds. */
export const MOST_REPLICATES_IN_FORM = 16;

/** The address of the entry form. */
export const newTestQuerySchema = z.object({
  lot: z.string().trim().max(200).optional().catch(undefined),
  /** rows that the form starts with: four of 50 unless asked otherwise */
  replicates: z.coerce.number().int().min(1).max(MOST_REPLICATES_IN_FORM).default(4).catch(4),
});
