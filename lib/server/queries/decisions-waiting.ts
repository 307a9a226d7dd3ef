import 'server-only';
import { Prisma } from '@/generated/prisma/client';

/**
 * Accessions judged 'regrow' without a decision that still speaks: one for the season in which they should be sown, or a
 * later one. For a statement in which AccessionJudgement is called j.
 */
export const DECISION_WAITS = Prisma.sql`j."action" = 'regrow' AND NOT EXISTS (
  SELECT 1 FROM "RegrowDecision" d WHERE d."accessionId" = j."accessionId" AND d."season" >= j."season")`;
