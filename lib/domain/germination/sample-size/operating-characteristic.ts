/*
 * What a sequential plan does to a lot of a given true germination, exactly.
 *
 * Forward recursion: the chance of every count at which the test is still going on is carried from look to look; each
 * group adds its own count, and what reaches a limit is taken out as a decision. Every term is a sum of products of
 * probabilities, nothing is subtracted, so chances of 1e-12 keep their digits.
 */
import { requireProportion } from '../../statistics/require-proportion';
import { addCounts, type Dishes, germinatedCountChances, INDEPENDENT_SEEDS } from './germinated-count';
import { goesOnFrom, requirePlan, type SequentialPlan, stopsOver } from './sequential-plan';

/** Chances, from before the test begins, of what happens at one look. */
export interface LookChances {
  seedsTested: number;
  /** of stopping here to regrow */
  regrow: number;
  /** of stopping here to keep */
  keep: number;
  /** of still going on after this look; after the last look: of ending undecided */
  goOn: number;
}

export interface OperatingCharacteristic {
  /** true germination of the lot, proportion */
  germination: number;
  looks: LookChances[];
  /** chance of regrowing, at whichever look */
  regrow: number;
  /** chance of keeping, at whichever look */
  keep: number;
  /** chance of ending without a decision; 0 when the last look always decides */
  undecided: number;
  /** seeds used on average */
  expectedSeeds: number;
  /** seeds used: the chance of each number, smallest first; only those that can happen */
  seedsUsed: { seeds: number; chance: number }[];
  /**
   * mean of germinated / tested when the test stops, minus the true germination: a test that stops because the count is
   * extreme overstates how extreme the lot is
   */
  bias: number;
}

/**
 * Exact behaviour of a plan for a lot of known germination.
 *
 * @param plan         looks in order
 * @param germination  the lot's true germination, proportion in [0, 1]
 * @param dishes       how the seeds of a group lie; independent seeds unless told. Groups are independent of each other
 * @returns chances that add to 1 (to 1e-13), each with a relative error below 1e-9
 * @throws RangeError when the plan is out of order or an argument outside its range
 * Own derivation (the usual recursion of group-sequential tests, on counts)
 * Checked against R, a recursion over whole matrices of paths: tests/golden/sequential-plan.json
 */
export function operatingCharacteristic(
  plan: SequentialPlan,
  germination: number,
  dishes: Dishes = INDEPENDENT_SEEDS,
): OperatingCharacteristic {
  requirePlan('operatingCharacteristic', plan);
  requireProportion('operatingCharacteristic', 'germination', germination);
  const groups = groupChances(germination, dishes);
  const looks: LookChances[] = [];
  const seedsUsed: { seeds: number; chance: number }[] = [];
  let goingOn: GoingOn = { from: 0, chances: Float64Array.of(1) };
  let meanProportion = 0;
  let tested = 0;
  for (const [index, look] of plan.looks.entries()) {
    const counts = addCounts(goingOn.chances, groups(look.seedsTested - tested));
    tested = look.seedsTested;
    const isLast = index === plan.looks.length - 1;
    const low = goesOnFrom(look);
    const high = stopsOver(look);
    let regrow = 0;
    let keep = 0;
    let goOn = 0;
    for (let i = 0; i < counts.length; i++) {
      const germinated = goingOn.from + i;
      const chance = counts[i] as number;
      if (germinated < low) regrow += chance;
      else if (germinated >= high) keep += chance;
      else goOn += chance;
      if (isLast || germinated < low || germinated >= high) meanProportion += chance * (germinated / tested);
    }
    looks.push({ seedsTested: tested, regrow, keep, goOn });
    const stopping = regrow + keep + (isLast ? goOn : 0);
    if (stopping > 0) seedsUsed.push({ seeds: tested, chance: stopping });
    goingOn = between(counts, goingOn.from, low, high);
  }
  const total = (part: (look: LookChances) => number) => looks.reduce((sum, look) => sum + part(look), 0);
  return {
    germination,
    looks,
    regrow: total((look) => look.regrow),
    keep: total((look) => look.keep),
    undecided: looks.at(-1)?.goOn ?? 0,
    expectedSeeds: seedsUsed.reduce((sum, { seeds, chance }) => sum + seeds * chance, 0),
    seedsUsed,
    bias: meanProportion - germination,
  };
}

/** Counts at which the test goes on: entry i is the chance of `from + i` germinated. */
export interface GoingOn {
  from: number;
  chances: Float64Array;
}

/**
 * The part of `counts` (entry i: `from + i` germinated) that lies in [low, high). Empty when the look decides all.
 *
 * @param counts     chances of the counts from `from` on
 * @param from       the count of entry 0, integer >= 0
 * @param low, high  counts, low <= high; high itself is left out
 * @returns the part, with the count it begins at
 * Checked through operatingCharacteristic: tests/domain/germination/sample-size/operating-characteristic.test.ts
 */
export function between(counts: Float64Array, from: number, low: number, high: number): GoingOn {
  const start = Math.max(low - from, 0);
  return { from: from + start, chances: counts.slice(start, Math.max(high - from, start)) };
}

/**
 * Chances of the count of a group, worked out once for each group size.
 *
 * @param germination  the lot's true germination, proportion in [0, 1]
 * @param dishes       how the seeds lie
 * @returns for a group of seeds, as `germinatedCountChances`
 * Checked through operatingCharacteristic: tests/domain/germination/sample-size/operating-characteristic.test.ts
 */
export function groupChances(germination: number, dishes: Dishes): (seeds: number) => Float64Array {
  const bySize = new Map<number, Float64Array>();
  return (seeds) => {
    const known = bySize.get(seeds);
    if (known) return known;
    const chances = germinatedCountChances(seeds, germination, dishes);
    bySize.set(seeds, chances);
    return chances;
  };
}
