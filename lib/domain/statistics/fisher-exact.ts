/*
 * Fisher's exact test for two counts. Given only how many germinated in all, the share that falls to the first test is
 * hypergeometric when both tests drew from the same seed; no unknown proportion and no large-sample formula enters.
 */
import { logChoose } from './binomial';
import { requireCounts } from './require-counts';

/** Splits that are equally likely on paper differ in the last digits here; R's fisher.test allows the same slack. */
const EQUAL_LIKELIHOOD_SLACK = 1e-7;

/**
 * Two-sided p-value of Fisher's exact test: the chance of a split no more likely than the one seen.
 *
 * @param first   successes and trials of the first sample: integers, 0 <= successes <= trials
 * @param second  the same for the second sample
 * @returns probability in (0, 1]; 1 when a sample is empty, or when all or none succeeded
 * @throws RangeError when a count is not an integer in its range
 * @see Fisher (1935), J. R. Stat. Soc. 98:39-82 (from memory)
 * Checked against R `fisher.test`: tests/golden/fisher-exact.json
 */
export function fisherExactPValue(
  first: { successes: number; trials: number },
  second: { successes: number; trials: number },
): number {
  requireCounts('fisherExactPValue', first.successes, first.trials);
  requireCounts('fisherExactPValue', second.successes, second.trials);
  const together = first.successes + second.successes;
  const fewest = Math.max(0, together - second.trials);
  const most = Math.min(together, first.trials);
  const logTotal = logChoose(first.trials + second.trials, together);
  const logProbability = (firstCount: number): number =>
    logChoose(first.trials, firstCount) + logChoose(second.trials, together - firstCount) - logTotal;

  const limit = logProbability(first.successes) + Math.log1p(EQUAL_LIKELIHOOD_SLACK);
  let pValue = 0;
  for (let count = fewest; count <= most; count++) {
    const logP = logProbability(count);
    if (logP <= limit) pValue += Math.exp(logP);
  }
  return Math.min(1, pValue);
}
