import 'server-only';
import { reader } from '../database/connections';
import { today } from '../today';

export interface OpenWork {
  today: number;
  testsDue: number;
  regrow: number;
}

/** How much waits: tests due, accessions to regrow that nobody has decided on. Shown beside the places. */
export async function countOpenWork(): Promise<OpenWork> {
  const [testsDue, regrow] = await Promise.all([
    reader().lotJudgement.count({ where: { testDueOn: { lte: today() } } }),
    countDecisionsWaiting(),
  ]);
  return { today: testsDue + regrow, testsDue, regrow };
}

/**
 * Accessions judged 'regrow' without a decision that still speaks: one for the season in which they should be sown, or a
 * later one.
 */
async function countDecisionsWaiting(): Promise<number> {
  const [row] = await reader().$queryRaw<{ waiting: bigint }[]>`
    SELECT COUNT(*) AS "waiting" FROM "AccessionJudgement" j
    WHERE j."action" = 'regrow' AND NOT EXISTS (
      SELECT 1 FROM "RegrowDecision" d WHERE d."accessionId" = j."accessionId" AND d."season" >= j."season")`;
  return Number(row?.waiting ?? 0);
}
