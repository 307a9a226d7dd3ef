/*
 * The distribution of the range (highest minus lowest proportion) of independent binomial samples with one chance.
 *
 * With the lowest proportion at v, all samples lie in [v, v + r] and not all in (v, v + r]; summing the difference of
 * the two products over every value v that a sample can take gives P(range <= r) exactly, for unequal sizes too.
 */
import { binomialLogPmf } from './binomial';

/** Proportions are compared through counts: n v is a whole number up to this much rounding. */
const WHOLE_NUMBER_SLACK = 1e-7;

interface Size {
  trials: number;
  /** how many samples have this size */
  samples: number;
  /** cumulative[k] = P(count <= k) */
  cumulative: number[];
}

/**
 * Prepares the chance that the range of binomial proportions exceeds a value.
 *
 * @param input.trials       size of each sample, integers, >= 1; at least one sample
 * @param input.probability  the common chance, in [0, 1]
 * @returns a function of a range r (proportion, 0-1) giving P(highest - lowest > r), absolute error below 1e-11
 * @throws RangeError when there is no sample, a size is not an integer >= 1, or the probability is outside [0, 1]
 * Checked against R: tests/golden/replicate-tolerance.json
 */
export function binomialRangeExceedance(input: {
  trials: readonly number[];
  probability: number;
}): (range: number) => number {
  if (input.trials.length === 0) throw new RangeError('binomialRangeExceedance: trials must name at least one sample');
  const sizes = countSizes(input.trials, input.probability);
  const values = possibleProportions(sizes);

  return (range) => {
    let within = 0;
    for (const value of values) {
      let fromValueOn = 1;
      let aboveValue = 1;
      for (const size of sizes) {
        const top = cumulativeAt(size, Math.floor(size.trials * (value + range) + WHOLE_NUMBER_SLACK));
        const below = cumulativeAt(size, Math.ceil(size.trials * value - WHOLE_NUMBER_SLACK) - 1);
        const upToValue = cumulativeAt(size, Math.floor(size.trials * value + WHOLE_NUMBER_SLACK));
        fromValueOn *= (top - below) ** size.samples;
        aboveValue *= (top - upToValue) ** size.samples;
      }
      within += fromValueOn - aboveValue;
    }
    return Math.max(0, 1 - within);
  };
}

function countSizes(trials: readonly number[], probability: number): Size[] {
  const samplesBySize = new Map<number, number>();
  for (const size of trials) {
    if (!Number.isSafeInteger(size) || size < 1) {
      throw new RangeError(`binomialRangeExceedance: trials must be whole numbers of at least 1, got ${size}`);
    }
    samplesBySize.set(size, (samplesBySize.get(size) ?? 0) + 1);
  }
  return [...samplesBySize].map(([size, samples]) => {
    const cumulative: number[] = [];
    let sum = 0;
    for (let successes = 0; successes <= size; successes++) {
      sum += Math.exp(binomialLogPmf({ successes, trials: size, probability }));
      cumulative.push(sum);
    }
    return { trials: size, samples, cumulative };
  });
}

/** Every proportion that some sample can show, once each: two sizes share some (1/2 and 2/4). */
function possibleProportions(sizes: readonly Size[]): number[] {
  const all = sizes.flatMap(({ trials }) => Array.from({ length: trials + 1 }, (_, count) => count / trials));
  all.sort((a, b) => a - b);
  return all.filter((value, i) => i === 0 || value - (all[i - 1] ?? 0) > 1e-12);
}

function cumulativeAt(size: Size, count: number): number {
  if (count < 0) return 0;
  return size.cumulative[Math.min(count, size.trials)] ?? 1;
}
