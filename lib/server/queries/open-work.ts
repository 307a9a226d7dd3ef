import 'server-only';
import { reader } from '../database/connections';
import { today } from '../today';
import { DECISION_WAITS } from './decisions-waiting';

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

async function countDecisionsWaiting(): Promise<number> {
  const [row] = await reader().$queryRaw<{ waiting: bigint }[]>`
    SELECT COUNT(*) AS "waiting" FROM "AccessionJudgement" j WHERE ${DECISION_WAITS}`;
  return Number(row?.waiting ?? 0);
}
