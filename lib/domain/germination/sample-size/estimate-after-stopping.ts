/*
 * The germination to write down after a sequential test has stopped.
 *
 * The plain share germinated / tested leans away from the line: the test stopped because the count was extreme. The
 * share in the first group is not selected in that way; its mean, given where the test stopped, is an estimate without
 * bias that varies less than that share itself (Rao-Blackwell). Whoever judges by likelihood, as Hilum's lot model does, needs
 * no correction: all seeds tested and all germinated say everything.
 */
import { requireCounts } from '../../statistics/require-counts';
import { addCounts, INDEPENDENT_SEEDS } from './germinated-count';
import { between, type GoingOn, groupChances } from './operating-characteristic';
import { goesOnFrom, requirePlan, type SequentialPlan, stopsOver } from './sequential-plan';

export type EstimateAfterStopping =
  | {
      ok: true;
      /** germinated / tested, proportion */
      plain: number;
      /** estimate without bias, proportion */
      unbiased: number;
    }
  /** the plan does not stop at these counts, or cannot come to them */
  | { ok: false; reason: 'no-stop-of-this-plan' };

/**
 * Plain and unbiased estimate of germination at a stop of the plan. Seeds are taken as independent.
 *
 * The chance of a way to the stop depends on the true germination only through the totals, so in the mean over all ways
 * it cancels: any germination may be used to weigh them, and the plain share keeps the weights large.
 *
 * @param plan  looks in order
 * @param at    seedsTested: of a look of the plan; germinated: integer, 0 to seedsTested
 * @returns both, relative error below 1e-9; or that the plan does not stop there
 * @throws RangeError when the plan is out of order or a count outside its range
 * @see Girshick, Mosteller & Savage (1946), Ann. Math. Statist. 17:13-23 (from memory)
 * Checked in tests/domain/germination/sample-size/estimate-after-stopping.test.ts: its mean over all stops is the true
 * germination, and against R: tests/golden/sequential-plan.json
 */
export function estimateAfterStopping(
  plan: SequentialPlan,
  at: { seedsTested: number; germinated: number },
): EstimateAfterStopping {
  requirePlan('estimateAfterStopping', plan);
  requireCounts('estimateAfterStopping', at.germinated, at.seedsTested);
  const refusal: EstimateAfterStopping = { ok: false, reason: 'no-stop-of-this-plan' };
  const lookIndex = plan.looks.findIndex((look) => look.seedsTested === at.seedsTested);
  const look = plan.looks[lookIndex];
  if (!look) return refusal;
  const isLast = lookIndex === plan.looks.length - 1;
  if (!isLast && at.germinated >= goesOnFrom(look) && at.germinated < stopsOver(look)) return refusal;

  const groups = groupChances((at.germinated + 0.5) / (at.seedsTested + 1), INDEPENDENT_SEEDS);
  // Two sums over the ways to each count: of their chances, and of their chances times the share in the first group.
  let ways: GoingOn = { from: 0, chances: Float64Array.of(1) };
  let weighted: GoingOn = ways;
  let tested = 0;
  for (const [index, { seedsTested }] of plan.looks.slice(0, lookIndex + 1).entries()) {
    const group = groups(seedsTested - tested);
    tested = seedsTested;
    const sum = addCounts(ways.chances, group);
    const weightedSum =
      index === 0
        ? sum.map((chance, germinated) => (chance * germinated) / seedsTested)
        : addCounts(weighted.chances, group);
    if (index === lookIndex) {
      const chance = sum[at.germinated - ways.from];
      const share = weightedSum[at.germinated - ways.from];
      if (!chance || share === undefined) return refusal;
      return { ok: true, plain: at.germinated / at.seedsTested, unbiased: share / chance };
    }
    const passing = plan.looks[index] ?? look;
    weighted = between(weightedSum, ways.from, goesOnFrom(passing), stopsOver(passing));
    ways = between(sum, ways.from, goesOnFrom(passing), stopsOver(passing));
  }
  return refusal;
}
