import 'server-only';
import { reader } from '../database/connections';
import { today } from '../today';
import { DECISION_WAITS } from './decisions-waiting';
import { countTraysWaiting } from './trays-under-way';
import { NOT_UNDER_TEST } from './under-test';

export interface OpenWork {
  today: number;
  /** trays to count or to close, and tests due */
  germination: number;
  regrow: number;
}

/** How much waits: at the bench, tests due, accessions to regrow that nobody has decided on. Shown beside the places. */
export async function countOpenWork(): Promise<OpenWork> {
  const [testsDue, regrow] = await Promise.all([
    reader().lotJudgement.count({ where: { testDueOn: { lte: today() }, ...NOT_UNDER_TEST } }),
    countDecisionsWaiting(),
  ]);
  const { toCount, toClose } = countTraysWaiting();
  const germination = toCount + toClose + testsDue;
  return { today: germination + regrow, germination, regrow };
}

async function countDecisionsWaiting(): Promise<number> {
  const [row] = await reader().$queryRaw<{ waiting: bigint }[]>`
    SELECT COUNT(*) AS "waiting" FROM "AccessionJudgement" j WHERE ${DECISION_WAITS}`;
  return Number(row?.waiting ?? 0);
}
