/*
 * How well a mean and an unevenness explain the dishes of a test: the beta-binomial likelihood, arranged for being
 * evaluated thousands of times while an interval is sought.
 *
 * A dish of n seeds with x successes contributes the product over j of (p (1 - rho) + j rho), j < x, times the same for
 * its failures, over that for all its seeds. Dishes share their factors, so it is enough to know how many dishes have
 * more than j successes, failures and seeds. The factors j = 0 are taken apart: in them 1 - rho cancels when every dish
 * is all or nothing, and so rho = 1 is an ordinary value.
 */

/** Successes and seeds of one dish. */
export interface DishCount {
  /** count, integer, 0 <= successes <= trials */
  successes: number;
  /** count, integer, >= 1 */
  trials: number;
}

/** p, 1 - p (given apart, so that neither end loses digits) and rho to a log likelihood without its constant. */
export type UnevenDishesLikelihood = (mean: number, meanComplement: number, correlation: number) => number;

/**
 * Prepares the log likelihood of dishes.
 *
 * @param dishes  at least one
 * @returns a function of mean (in (0, 1)), its complement and correlation (in [0, 1]); -Infinity where the dishes cannot
 *          be (rho = 1 and a dish that is neither all nor nothing)
 * @throws nothing; the caller has checked the counts
 * Checked through `unevenDishesInterval`, and against `betaBinomialLogPmf`:
 * tests/domain/statistics/uneven-dishes-interval.test.ts
 */
export function unevenDishesLikelihood(dishes: readonly DishCount[]): UnevenDishesLikelihood {
  const most = Math.max(...dishes.map(({ trials }) => trials));
  const withMore = (count: (dish: DishCount) => number) =>
    Float64Array.from({ length: most }, (_, j) => dishes.filter((dish) => count(dish) > j).length);
  const successes = withMore(({ successes }) => successes);
  const failures = withMore(({ successes, trials }) => trials - successes);
  const seeds = withMore(({ trials }) => trials);
  const someSucceeded = successes[0] as number;
  const someFailed = failures[0] as number;
  const mixed = someSucceeded + someFailed - dishes.length;

  return (mean, meanComplement, correlation) => {
    const independent = 1 - correlation;
    let sum = someSucceeded * Math.log(mean) + someFailed * Math.log(meanComplement);
    if (mixed > 0) sum += mixed * Math.log(independent);
    const successStart = mean * independent;
    const failureStart = meanComplement * independent;
    for (let j = 1; j < most; j++) {
      const alike = j * correlation;
      const succeeded = successes[j] as number;
      const failed = failures[j] as number;
      if (succeeded > 0) sum += succeeded * Math.log(successStart + alike);
      if (failed > 0) sum += failed * Math.log(failureStart + alike);
      sum -= (seeds[j] as number) * Math.log(independent + alike);
    }
    return sum;
  };
}
