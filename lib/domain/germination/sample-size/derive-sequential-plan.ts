/*
 * A sequential plan of our own for any line, with error rates that are computed and kept.
 *
 * Wald's probability-ratio test is known to need the fewest seeds on average. On counts its limits are two parallel
 * straight lines: go on while  slope x n - a  <  germinated  <  slope x n + b, where the slope is the germination at
 * which a poor and a good lot are equally likely. Wald's a and b assume a look after every seed and no end. Here looks
 * come in groups and seeds run out, so a and b are found by search: the narrowest pair, and with it the last cut, for
 * which the exact error rates keep the limits.
 */
import { requireProportion } from '../../statistics/require-proportion';
import { addCounts, type Dishes, INDEPENDENT_SEEDS } from './germinated-count';
import { between, type GoingOn, groupChances } from './operating-characteristic';
import { requireSeeds } from './require-seeds';
import { requireErrorGoal } from './seeds-to-tell';
import type { SequentialLook, SequentialPlan } from './sequential-plan';
import { type ErrorGoal, isWithin, type SingleTest, singleTestIn } from './single-test-power';

export interface DerivePlanInput extends ErrorGoal {
  /** seeds set at a time, integer >= 1; 40 unless told */
  groupSize?: number;
  /** most seeds that may be used, integer >= 1; 400 unless told. The last group may be smaller to fit it */
  maxSeeds?: number;
  /** how the seeds of a group lie; independent seeds unless told */
  dishes?: Dishes;
}

export type DerivedPlan =
  | {
      ok: true;
      plan: SequentialPlan;
      /** chance of keeping a lot exactly at `poor`; not above the goal */
      falseKeep: number;
      /** chance of regrowing a lot exactly at `good`; not above the goal */
      falseRegrow: number;
    }
  | {
      ok: false;
      reason: 'not-enough-seeds';
      maxSeeds: number;
      /** what a single test of all of them would do */
      best: SingleTest;
    };

/**
 * The plan that uses the fewest seeds on average (over a poor lot, a good one and one at the slope, in equal parts)
 * among plans of one to as many looks as the seeds allow. Of plans within half a seed the one with the fewest looks.
 *
 * @param input  poor and good strictly between 0 and 1; see DerivePlanInput
 * @returns the plan with its real error rates, always deciding at its last look; or that the seeds do not suffice
 * @throws RangeError when an argument is outside its range
 * Own derivation; shape of the limits: Wald (1945), Ann. Math. Statist. 16:117-186 (from memory)
 * Checked in tests/domain/germination/sample-size/derive-sequential-plan.test.ts: the error rates of derived plans
 * against R (tests/golden/sequential-plan.json), and the search against trying every pair of lines
 */
export function deriveSequentialPlan(input: DerivePlanInput): DerivedPlan {
  const { groupSize = 40, maxSeeds = 400, dishes = INDEPENDENT_SEEDS } = input;
  requireErrorGoal('deriveSequentialPlan', input);
  requireProportion('deriveSequentialPlan', 'poor', input.poor, true);
  requireProportion('deriveSequentialPlan', 'good', input.good, true);
  requireSeeds('deriveSequentialPlan', 'groupSize', groupSize, 1);
  requireSeeds('deriveSequentialPlan', 'maxSeeds', maxSeeds, 1);
  const search = lineSearch(input, dishes);
  let best: Candidate | null = null;
  for (let looks = 1; looks <= Math.ceil(maxSeeds / groupSize); looks++) {
    const sizes = Array.from({ length: looks }, (_, k) => Math.min((k + 1) * groupSize, maxSeeds));
    const found = search(sizes);
    if (found && (best === null || found.meanSeeds < best.meanSeeds - WORTH_A_LOOK)) best = found;
  }
  if (best === null) {
    return { ok: false, reason: 'not-enough-seeds', maxSeeds, best: singleTestIn(maxSeeds, input, dishes) };
  }
  return { ok: true, plan: { looks: best.looks }, falseKeep: best.falseKeep, falseRegrow: best.falseRegrow };
}

/** A further look that saves less than half a seed on average is not worth a longer plan. */
const WORTH_A_LOOK = 0.5;

interface Candidate {
  looks: SequentialLook[];
  falseKeep: number;
  falseRegrow: number;
  meanSeeds: number;
}

/** For given looks: the narrowest lines that keep both limits, or null when not even a single test of all seeds does. */
function lineSearch(goal: ErrorGoal, dishes: Dishes): (sizes: readonly number[]) => Candidate | null {
  const { slope, regrowDistance, keepDistance } = waldLines(goal);
  const evaluate = planEvaluator(goal, slope, dishes);
  return (sizes) => {
    const never = slope * (sizes.at(-1) ?? 0) + 1;
    const always = evaluate(sizes, never, never);
    if (always === null || sizes.length === 1) return always;
    // A limit moves only where a line crosses a whole count, so these distances try every different plan.
    const regrowSteps = distances(sizes, (seeds) => slope * seeds);
    const keepSteps = distances(sizes, (seeds) => -slope * seeds);
    const ratio = keepDistance / regrowDistance;
    // First both lines together, in Wald's proportion; then each alone, as far as the other's slack allows.
    let a = regrowSteps.find((step) => evaluate(sizes, step, step * ratio) !== null) ?? never;
    let b = a === never ? never : a * ratio;
    b = keepSteps.find((step) => step <= b && evaluate(sizes, a, step) !== null) ?? b;
    a = regrowSteps.find((step) => step <= a && evaluate(sizes, step, b) !== null) ?? a;
    return evaluate(sizes, a, b);
  };
}

/**
 * The straight lines of Wald's test: keep when the likelihood ratio of good to poor reaches (1 - falseRegrow) /
 * falseKeep, regrow when it falls to falseRegrow / (1 - falseKeep). Distances from the slope line, in seeds.
 */
function waldLines({ poor, good, falseKeep, falseRegrow }: ErrorGoal) {
  const perGerminated = Math.log((good * (1 - poor)) / (poor * (1 - good)));
  return {
    slope: Math.log((1 - poor) / (1 - good)) / perGerminated,
    regrowDistance: Math.log((1 - falseKeep) / falseRegrow) / perGerminated,
    keepDistance: Math.log((1 - falseRegrow) / falseKeep) / perGerminated,
  };
}

/** Distances from the slope line at which the limit of some look changes, from narrow to wide. */
function distances(sizes: readonly number[], lineAt: (seeds: number) => number): number[] {
  const widest = Math.abs(lineAt(sizes.at(-1) ?? 0)) + 1;
  const all = new Set<number>();
  for (const seeds of sizes.slice(0, -1)) {
    const fraction = lineAt(seeds) - Math.floor(lineAt(seeds));
    for (let distance = fraction; distance <= widest; distance++) all.add(distance);
  }
  return [...all].sort((first, second) => first - second);
}

/** Rounding of slope x seeds must not move a limit that lies exactly on a count. */
const ON_A_COUNT = 1e-9;

function planEvaluator(goal: ErrorGoal, slope: number, dishes: Dishes) {
  const lots = [goal.poor, goal.good, slope].map((germination) => groupChances(germination, dishes));
  return (sizes: readonly number[], a: number, b: number): Candidate | null => {
    const looks: SequentialLook[] = [];
    let states: GoingOn[] = lots.map(() => ({ from: 0, chances: Float64Array.of(1) }));
    let falseKeep = 0;
    let falseRegrow = 0;
    let meanSeeds = 0;
    let tested = 0;
    for (const seedsTested of sizes) {
      const counts = states.map(({ chances }, lot) =>
        addCounts(chances, (lots[lot] as (seeds: number) => Float64Array)(seedsTested - tested)),
      );
      for (const { chances } of states) meanSeeds += ((seedsTested - tested) * sum(chances)) / lots.length;
      tested = seedsTested;
      const from = states[0]?.from ?? 0;
      const atPoor = counts[0] ?? Float64Array.of();
      const atGood = counts[1] ?? Float64Array.of();
      if (looks.length === sizes.length - 1) {
        const cut = lastCut(
          atPoor,
          atGood,
          goal.falseKeep - falseKeep,
          goal.falseRegrow - falseRegrow,
          slope * tested - from,
        );
        if (cut === null) return null;
        looks.push({ seedsTested, regrowAtMost: from + cut - 1, keepAtLeast: from + cut });
        return {
          looks,
          falseKeep: falseKeep + sum(atPoor.subarray(cut)),
          falseRegrow: falseRegrow + sum(atGood.subarray(0, cut)),
          meanSeeds,
        };
      }
      const low = Math.max(Math.floor(slope * tested - a + ON_A_COUNT) + 1, 0);
      const high = Math.min(Math.ceil(slope * tested + b - ON_A_COUNT), tested + 1);
      if (low >= high) return null;
      falseKeep += sum(atPoor.subarray(Math.max(high - from, 0)));
      falseRegrow += sum(atGood.subarray(0, Math.max(low - from, 0)));
      if (!isWithin(falseKeep, goal.falseKeep) || !isWithin(falseRegrow, goal.falseRegrow)) return null;
      looks.push({
        seedsTested,
        regrowAtMost: low === 0 ? null : low - 1,
        keepAtLeast: high > tested ? null : high,
      });
      states = counts.map((chances) => between(chances, from, low, high));
    }
    return null;
  };
}

/**
 * The cut of the last look, as an index into the counts: keep from there on. Of the cuts that keep both limits the one
 * nearest to the slope line; null when none does.
 */
function lastCut(
  atPoor: Float64Array,
  atGood: Float64Array,
  falseKeepLeft: number,
  falseRegrowLeft: number,
  slopeIndex: number,
): number | null {
  let lowest = atPoor.length;
  for (let kept = 0; lowest > 0; lowest--) {
    kept += atPoor[lowest - 1] as number;
    if (!isWithin(kept, falseKeepLeft)) break;
  }
  let highest = 0;
  for (let regrown = 0; highest < atGood.length; highest++) {
    regrown += atGood[highest] as number;
    if (!isWithin(regrown, falseRegrowLeft)) break;
  }
  if (lowest > highest) return null;
  return Math.min(Math.max(Math.ceil(slopeIndex - ON_A_COUNT), lowest), highest);
}

function sum(chances: Float64Array): number {
  let total = 0;
  for (const chance of chances) total += chance;
  return total;
}
