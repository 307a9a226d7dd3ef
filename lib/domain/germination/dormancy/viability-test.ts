/*
 * Viability shown without growing the seed: by staining in tetrazolium, or by cutting. Each has its own classes. Both use
 * the seed up.
 *
 * Tetrazolium stains living tissue: a seed counts as alive when the parts that make a seedling are stained as they should
 * be. A cut shows only whether a seed is full and firm; firm seed may still be dead, so that a cut test gives the most that
 * can be alive.
 */

import { binomialInterval } from '../../statistics/binomial-interval';
import type { Estimate } from '../result';

export interface TetrazoliumCounts {
  /** the parts that make a seedling are stained evenly: counts as alive */
  stainedNormally: number;
  /** stained in part, or too dark or pale where it matters: could not make a normal seedling */
  stainedAbnormally: number;
  unstained: number;
}

export interface CutCounts {
  /** full, firm and of a healthy colour: perhaps alive */
  firm: number;
  empty: number;
  insectDamaged: number;
  /** full but soft, discoloured or decayed */
  dead: number;
}

export interface ViabilityTestResult {
  /** seeds stained or cut */
  seeds: number;
  /** seeds that count as alive, or perhaps alive */
  alive: number;
  /** their share of all seeds, with a Wilson interval */
  estimate: Estimate;
  /** a cut test shows the most that can be alive, a tetrazolium test how much is */
  shows: 'alive' | 'at-most-alive';
}

export interface CutTestResult extends ViabilityTestResult {
  /** empty and insect-damaged seed of all: what cleaning could still take out; with a Wilson interval */
  worthless: Estimate;
  /** firm of the full seeds; null when none was full */
  firmOfFull: Estimate | null;
}

/**
 * Result of a tetrazolium test.
 *
 * @param counts  integers >= 0, not all 0
 * @param level   probability in (0, 1), default 0.95
 * @returns share stained normally of all seeds, with its interval
 * @throws RangeError when a count is not a whole number >= 0, all are 0, or the level is outside (0, 1)
 * @see 7 CFR 201.57a (2015 edition): dormant seed is shown alive by cutting, tetrazolium, scarification or chemicals; that
 *      partly stained seed does not count is common practice
 * Checked in tests/domain/germination/dormancy/viability-test.test.ts
 */
export function tetrazoliumResult(counts: TetrazoliumCounts, level = 0.95): ViabilityTestResult {
  const seeds = totalOf('tetrazoliumResult', counts);
  const alive = counts.stainedNormally;
  return { seeds, alive, estimate: estimateOf(alive, seeds, level), shows: 'alive' };
}

/**
 * Result of a cut test.
 *
 * @param counts  integers >= 0, not all 0
 * @param level   probability in (0, 1), default 0.95
 * @returns share firm of all seeds, of the full ones, and the share empty or insect-damaged, with intervals
 * @throws RangeError when a count is not a whole number >= 0, all are 0, or the level is outside (0, 1)
 * @see classes: common practice
 * Checked in tests/domain/germination/dormancy/viability-test.test.ts
 */
export function cutResult(counts: CutCounts, level = 0.95): CutTestResult {
  const seeds = totalOf('cutResult', counts);
  const full = counts.firm + counts.dead;
  return {
    seeds,
    alive: counts.firm,
    estimate: estimateOf(counts.firm, seeds, level),
    shows: 'at-most-alive',
    worthless: estimateOf(counts.empty + counts.insectDamaged, seeds, level),
    firmOfFull: full === 0 ? null : estimateOf(counts.firm, full, level),
  };
}

function totalOf(functionName: string, counts: TetrazoliumCounts | CutCounts): number {
  let total = 0;
  for (const [name, count] of Object.entries(counts)) {
    if (!Number.isSafeInteger(count) || count < 0) {
      throw new RangeError(`${functionName}: ${name} must be a whole number of at least 0, got ${count}`);
    }
    total += count;
  }
  if (total === 0) throw new RangeError(`${functionName}: counts must add to at least 1, got 0`);
  return total;
}

const estimateOf = (successes: number, trials: number, level: number): Estimate => ({
  proportion: successes / trials,
  interval: binomialInterval({ successes, trials, level }),
});
