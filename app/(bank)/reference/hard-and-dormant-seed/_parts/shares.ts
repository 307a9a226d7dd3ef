import { binomialInterval } from '@/lib/domain/statistics/binomial-interval';

/** A proportion in percent, to one decimal at most: 0.8125 -> 81.3. */
export const inPercent = (proportion: number) => Math.round(proportion * 1000) / 10;

/** The share that grew, and what it says of the lot. */
export const germinationOf = (successes: number, trials: number) => ({
  proportion: successes / trials,
  interval: binomialInterval({ successes, trials }),
});
