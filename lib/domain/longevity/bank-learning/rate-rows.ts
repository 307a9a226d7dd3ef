/** Which rates of ageing a lot's tests leave plausible: the rows of its table (lot-evidence.ts). */
import { BASE_STEP, FINEST_LEVEL, LOG_RATE_FROM, LOG_RATE_TO } from './lattice';

const ROWS_ACROSS_TOP = 5; // rows within e^-2 of the top: a step of about one width
const COARSEST_RATE_STEP = 0.5;
const FIRST_STRIDE = 4; // places; a top lies near where the rows before it point
export const CUT = 45; // e^-45 of the top is left out: a crop believed to lie eight spreads away still finds its numbers
// A gentle pull towards the middle: it only chooses what is tabulated (lot-evidence.ts).
export const PULL_LOG_RATE = 1 / (2 * 3 ** 2);

export interface RateRow {
  logRate: number;
  /** place of the row's top on the lattice of K, and its height */
  place: number;
  height: number;
}

/** Height of a row with the pull on its log rate. */
export const pulledHeight = ({ height, logRate }: RateRow): number => height - PULL_LOG_RATE * logRate ** 2;

/**
 * Log rates at which the lot's tests are plausible, at a step fine enough for the hump that they make.
 *
 * @param heightAt  for a rate, the log-likelihood at each place on the lattice of K
 * @param last      last place of that lattice
 * @param start     place from which the search for tops begins
 * @returns rows in rising order of rate, with the level of their lattice and the place of the first on it
 * Checked through the marginal likelihood: tests/domain/longevity/bank-learning/population-likelihood.test.ts
 */
export function chooseRows(
  heightAt: (rate: number) => (place: number) => number,
  last: number,
  start: number,
): { rows: RateRow[]; rateLevel: number; firstRate: number } {
  let from = LOG_RATE_FROM;
  let to = LOG_RATE_TO;
  for (let step = COARSEST_RATE_STEP; ; step *= 0.5) {
    const rows: RateRow[] = [];
    let place = start;
    let shift = 0;
    for (let logRate = from; logRate <= to + 1e-9; logRate += step) {
      const guess = Math.min(last, Math.max(0, place + shift));
      const top = climb(heightAt(Math.exp(logRate)), guess, last);
      if (rows.length > 0) shift = top.place - place;
      place = top.place;
      rows.push({ logRate, ...top });
    }
    const heights = rows.map(pulledHeight);
    const highest = Math.max(...heights);
    const first = Math.max(0, heights.findIndex((height) => height > highest - CUT) - 1);
    const end = Math.min(rows.length - 1, heights.findLastIndex((height) => height > highest - CUT) + 1);
    const kept = rows.slice(first, end + 1);
    const across = heights.filter((height) => height > highest - 2).length;
    const level = Math.round(Math.log2(BASE_STEP / step));
    if (level >= 0 && (across >= ROWS_ACROSS_TOP || level >= FINEST_LEVEL)) {
      return {
        rows: kept,
        rateLevel: level,
        firstRate: Math.round(((kept[0] as RateRow).logRate - LOG_RATE_FROM) / step),
      };
    }
    from = (kept[0] as RateRow).logRate;
    to = (kept.at(-1) as RateRow).logRate;
  }
}

/**
 * Highest place of one hump, from a place nearby: strides that halve.
 *
 * @param height  the function, with one hump near the start
 * @param start   place to start from, integer from 0 to `last`
 * @param last    the last place, integer
 * @returns the place and its height
 * Checked through populationFit: tests/domain/longevity/bank-learning/population-likelihood.test.ts
 */
export function climb(
  height: (place: number) => number,
  start: number,
  last: number,
): { place: number; height: number } {
  let place = start;
  let best = height(place);
  for (let stride = FIRST_STRIDE; stride >= 1; ) {
    const right = place + stride <= last ? height(place + stride) : Number.NEGATIVE_INFINITY;
    if (right > best) {
      place += stride;
      best = right;
      continue;
    }
    const left = place - stride >= 0 ? height(place - stride) : Number.NEGATIVE_INFINITY;
    if (left > best) {
      place -= stride;
      best = left;
      continue;
    }
    stride = stride > 1 ? stride / 2 : 0;
  }
  return { place, height: best };
}
