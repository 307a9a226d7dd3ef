import { z } from 'zod';
import { blankToUndefined } from './field-schemas';
import { REGROW_ACTIONS } from './regrow-decision';

/** The regrow list's address: filters and page. What cannot be read is left out rather than refused. */
export const regrowQuerySchema = z.object({
  // A form sends '' for 'all crops'.
  crop: z.preprocess(blankToUndefined, z.string().max(60).optional()).catch(undefined),
  season: z.coerce.number().int().min(1950).max(2300).optional().catch(undefined),
  action: z.enum(REGROW_ACTIONS).optional().catch(undefined),
  q: z.string().trim().max(200).optional().catch(undefined),
  page: z.coerce.number().int().min(1).max(100_000).default(1).catch(1),
  /** 'all': one long page for the printer */
  print: z.literal('all').optional().catch(undefined),
});
