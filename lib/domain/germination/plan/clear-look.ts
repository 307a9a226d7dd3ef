/*
 * One test of a fixed size, read without deceiving oneself: above one count the lot is surely good enough, below another
 * it surely is not, and between them the count is not clear. The error limits are those of the plans in groups, so the two
 * can be compared.
 */
import { binomialLowerTail, binomialUpperTail } from '../../statistics/binomial';
import { requireSeeds } from '../sample-size/require-seeds';
import type { SequentialLook } from '../sample-size/sequential-plan';
import { type ErrorGoal, isWithin, singleTest } from '../sample-size/single-test-power';

/**
 * Limits of a single test of so many seeds: keep from the smallest count that a poor lot reaches too rarely, regrow up to
 * the largest that a good lot falls to too rarely. With seeds enough the two meet, and every count is clear.
 *
 * @param seeds  integer >= 1
 * @param goal   levels and limits of error
 * @returns the look, its limits null where no count is clear
 * @throws RangeError when seeds is outside its range
 * Checked against R `pbinom`: tests/golden/test-plan.json
 */
export function clearLook(seeds: number, goal: ErrorGoal): SequentialLook {
  requireSeeds('clearLook', 'seeds', seeds, 1);
  const keepFrom = singleTest(seeds, goal).keepAtLeast;
  const regrowTo = mostThatRegrows(seeds, goal);
  if (regrowTo < keepFrom) {
    return {
      seedsTested: seeds,
      regrowAtMost: regrowTo < 0 ? null : regrowTo,
      keepAtLeast: keepFrom > seeds ? null : keepFrom,
    };
  }
  // Any cut from keepFrom to regrowTo + 1 keeps both limits: the one nearest to where both lots are equally likely.
  const cut = Math.min(Math.max(Math.ceil(seeds * evenShare(goal)), keepFrom), regrowTo + 1);
  return { seedsTested: seeds, regrowAtMost: cut - 1, keepAtLeast: cut };
}

/**
 * How a lot of known viability fares in a single test.
 *
 * @param look       counts of seeds
 * @param viability  the lot's true viability, proportion in [0, 1]
 * @returns chances of a clear answer either way
 * Checked against R `pbinom`: tests/golden/test-plan.json
 */
export function clearChances(
  { seedsTested: trials, regrowAtMost, keepAtLeast }: SequentialLook,
  viability: number,
): { keep: number; regrow: number } {
  return {
    keep: keepAtLeast === null ? 0 : binomialUpperTail({ successes: keepAtLeast, trials, probability: viability }),
    regrow: regrowAtMost === null ? 0 : binomialLowerTail({ successes: regrowAtMost, trials, probability: viability }),
  };
}

function mostThatRegrows(seeds: number, { good, falseRegrow }: ErrorGoal): number {
  const isRare = (successes: number) =>
    isWithin(binomialLowerTail({ successes, trials: seeds, probability: good }), falseRegrow);
  let most = Math.floor(seeds * good);
  while (most >= 0 && !isRare(most)) most--;
  while (most >= 0 && most < seeds && isRare(most + 1)) most++;
  return most;
}

/** The germination at which a poor and a good lot are equally likely. */
function evenShare({ poor, good }: ErrorGoal): number {
  return Math.log((1 - poor) / (1 - good)) / Math.log((good * (1 - poor)) / (poor * (1 - good)));
}
