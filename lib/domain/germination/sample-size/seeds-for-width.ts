/*
 * How many seeds a germination test needs so that its interval is as narrow as wanted.
 */
import { fewestBetween } from '../../statistics/fewest-between';
import { intervalHalfWidth, type WidthQuestion } from './interval-width';
import { requireSeeds } from './require-seeds';

/** No test is larger; with this many seeds a 95 % interval is 0.2 points to either side at worst. */
const MOST_SEEDS_CONSIDERED = 200_000;

export interface SeedsForWidthInput extends WidthQuestion {
  /** half-width wanted, proportion in (0, 0.5): 0.05 for 5 points to either side */
  halfWidth: number;
  /** seeds that may be used up, integer >= 1; all that the lot can spare */
  seedsAvailable?: number;
}

export type SeedsForWidth =
  | { ok: true; seeds: number; halfWidth: number }
  | {
      ok: false;
      /** the seeds available do not make the interval as narrow as wanted */
      reason: 'not-enough-seeds';
      seedsAvailable: number;
      /** half-width when all of them are used, proportion */
      halfWidthReached: number;
    };

/** Keeps a half-width that equals the wanted one but for rounding. */
const TIE = 1e-12;

/**
 * Fewest seeds whose interval is at most as wide as wanted.
 *
 * The half-width falls with every seed from the second on (a single seed can only give 0 or all, and is tried first), so
 * the answer is bracketed by doubling and closed by halving.
 *
 * @param input  see SeedsForWidthInput
 * @returns the number of seeds and the half-width that they give; or that the seeds available do not suffice, and the
 *          half-width that they reach
 * @throws RangeError when an argument is outside its range
 * Own derivation: a search over exact intervals, no approximation
 * Checked against R: tests/golden/seeds-for-width.json, and in tests/domain/germination/sample-size/seeds-for-width.test.ts
 */
export function seedsForWidth(input: SeedsForWidthInput): SeedsForWidth {
  const { halfWidth, seedsAvailable = MOST_SEEDS_CONSIDERED } = input;
  if (!(halfWidth > 0 && halfWidth < 0.5)) {
    throw new RangeError(`seedsForWidth: halfWidth must be in (0, 0.5), got ${halfWidth}`);
  }
  requireSeeds('seedsForWidth', 'seedsAvailable', seedsAvailable, 1);
  const widthWith = (seeds: number) => intervalHalfWidth(seeds, input);
  const isEnough = (seeds: number) => widthWith(seeds) <= halfWidth + TIE;

  const most = Math.min(seedsAvailable, MOST_SEEDS_CONSIDERED);
  let tooFew = 0;
  let enough = 1;
  while (!isEnough(enough)) {
    if (enough === most) {
      return { ok: false, reason: 'not-enough-seeds', seedsAvailable: most, halfWidthReached: widthWith(most) };
    }
    tooFew = enough;
    enough = Math.min(2 * enough, most);
  }
  const seeds = fewestBetween(isEnough, tooFew, enough);
  return { ok: true, seeds, halfWidth: widthWith(seeds) };
}
