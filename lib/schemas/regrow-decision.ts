import { z } from 'zod';
import { blankToUndefined, countBetween, longText } from './field-schemas';

export const REGROW_ACTIONS = ['regrow', 'test-first', 'leave'] as const;
export type RegrowAction = (typeof REGROW_ACTIONS)[number];

const text = (message: string) => z.preprocess(blankToUndefined, z.string({ error: message }).max(60, message));

/** What the steward decided about an accession for a season, and why. */
export const regrowDecisionSchema = z.object({
  accession: text('Choose an accession.'),
  lotId: z.preprocess(blankToUndefined, z.string().max(60).optional()),
  action: z.enum(REGROW_ACTIONS, { error: 'Choose what to do.' }),
  season: countBetween({ min: 1950, max: 2300 }, 'the season (a year)'),
  reason: longText,
});
