/*
 * Which test is enough for a lot.
 *
 * Seed that is tested is gone, so a test should be as small as tells what is asked: is the lot above its line? How small
 * that is depends on what is believed of the lot already. Forty seeds are plenty for a lot far above its line; near the line
 * no number that anybody can spare would tell, and groups that stop as soon as the count is clear waste least.
 * Why so, and when it misleads: docs/methods/test-plan.md
 */
import type { SequentialPlan } from '../sample-size/sequential-plan';
import type { ErrorGoal } from '../sample-size/single-test-power';
import { BELIEF_STEPS, type Belief, viabilityOfStep } from './belief';
import { clearLook } from './clear-look';
import { type GroupPlan, groupPlan } from './group-plan';
import { type PlanOutcome, planOutcome } from './plan-outcome';
import { testGoal } from './test-goal';
import { GROUP_SEEDS, seedsOf, sizeKey, TEST_SIZES, type TestSize } from './test-sizes';

/** A test is enough when it will be clear so often. Our own choice. */
const CLEAR_OFTEN_ENOUGH = 0.9;
/** Fewer say too little of how alive the lot is, however clear they are. Our own choice. */
const LEAST_SEEDS = 40;
/** A first test tells where the lot begins, and every forecast rests on it. Our own choice. */
const LEAST_SEEDS_OF_FIRST_TEST = 100;
/** Groups may wait weeks for each other: they must save so many seeds. Our own choice. */
const WORTH_WAITING_FOR = 20;
/** Where no test is clear often enough, more seed must make it clear so much more often. Our own choice. */
const WORTH_MORE_SEED = 0.05;
/** A test without anything to weigh it on. Common practice. */
const USUAL_SEEDS = 100;
/** Chance of being beyond a level that counts as being beyond it. Our own choice. */
const VERY_LIKELY = 0.9;

export type TestOption =
  | { kind: 'fixed'; key: string; size: TestSize; seeds: number; outcome: PlanOutcome | null }
  | { kind: 'groups'; key: 'groups'; plan: GroupPlan; seeds: number; outcome: PlanOutcome };

/** Where the lot is believed to be, seen from its line. */
export type Standing = 'far-above' | 'far-below' | 'near-line' | 'uncertain';

export interface TestProposal {
  /** null: less can be spared than the smallest test takes */
  chosen: TestOption | null;
  /** what can be spared, fewest seeds first, groups last */
  options: TestOption[];
  /** null: no forecast, so nothing to weigh the tests on */
  standing: Standing | null;
  firstTest: boolean;
  /** the chosen test will be clear often enough; null without a forecast or a test */
  enough: boolean | null;
  /** line to the whole percent, proportion; null without a forecast */
  line: number | null;
  seedsToSpare: number;
}

export interface LotToPropose {
  /** null: no forecast holds */
  belief: Belief | null;
  /** viability at which the lot is regrown, proportion in (0, 1); null: not known */
  line: number | null;
  /** seeds that may be used up, integer >= 0 */
  seedsToSpare: number;
  /** has at least one germination test */
  everTested: boolean;
}

/**
 * The test that is enough for a lot with the fewest seeds on average, and the others it could have.
 *
 * Of tests that are clear in 90 of 100 cases the smallest is chosen; groups where they save 20 seeds on average. Where none
 * is clear so often, the one that is clear most often, unless fewer seeds do nearly as well.
 *
 * @param lot  see LotToPropose
 * @returns see TestProposal; no test takes more than can be spared
 * @throws RangeError when an argument is outside its range
 * @see docs/methods/test-plan.md
 * Checked in tests/domain/germination/plan/propose-test.test.ts; the size chosen against R: tests/golden/test-plan.json
 */
export function proposeTest({ belief, line, seedsToSpare, everTested }: LotToPropose): TestProposal {
  if (!Number.isInteger(seedsToSpare) || seedsToSpare < 0) {
    throw new RangeError(`proposeTest: seedsToSpare must be an integer >= 0, got ${seedsToSpare}`);
  }
  if (belief && belief.length !== BELIEF_STEPS) {
    throw new RangeError(`proposeTest: belief must have ${BELIEF_STEPS} steps, got ${belief.length}`);
  }
  const firstTest = !everTested;
  if (belief === null || line === null) return withoutForecast(seedsToSpare, firstTest);
  const goal = testGoal(line);
  const options = optionsFor(goal, belief, seedsToSpare);
  const chosen = choose(options, firstTest);
  return {
    chosen,
    options,
    standing: standingOf(belief, goal),
    firstTest,
    enough: chosen ? isEnough(chosen) : null,
    line: goal.line,
    seedsToSpare,
  };
}

function withoutForecast(seedsToSpare: number, firstTest: boolean): TestProposal {
  const options = spared(seedsToSpare).map(
    (size): TestOption => ({ kind: 'fixed', key: sizeKey(size), size, seeds: seedsOf(size), outcome: null }),
  );
  const chosen = options.findLast(({ seeds }) => seeds <= USUAL_SEEDS) ?? null;
  return { chosen, options, standing: null, firstTest, enough: null, line: null, seedsToSpare };
}

const spared = (seedsToSpare: number) => TEST_SIZES.filter((size) => seedsOf(size) <= seedsToSpare);

function optionsFor(goal: ErrorGoal & { line: number }, belief: Belief, seedsToSpare: number): TestOption[] {
  const fixed = spared(seedsToSpare).map((size): TestOption => {
    const seeds = seedsOf(size);
    const outcome = planOutcome(singleLook(seeds, goal), belief, goal);
    return { kind: 'fixed', key: sizeKey(size), size, seeds, outcome };
  });
  const plan = groupPlan(goal.line, seedsToSpare);
  if (!plan) return fixed;
  return [
    ...fixed,
    { kind: 'groups', key: 'groups', plan, seeds: GROUP_SEEDS, outcome: planOutcome(plan, belief, goal) },
  ];
}

const looks = new Map<string, SequentialPlan>();

/** The same object for the same line and seeds, so that what is worked out of it is kept. */
function singleLook(seeds: number, goal: ErrorGoal & { line: number }): SequentialPlan {
  const key = `${goal.line} ${seeds}`;
  const known = looks.get(key) ?? { looks: [clearLook(seeds, goal)] };
  looks.set(key, known);
  return known;
}

function choose(options: readonly TestOption[], firstTest: boolean): TestOption | null {
  const largest = options.findLast(({ kind }) => kind === 'fixed');
  if (!largest) return null;
  const least = Math.min(firstTest ? LEAST_SEEDS_OF_FIRST_TEST : LEAST_SEEDS, largest.seeds);
  // A first test says how alive the lot is, not only on which side of the line: it is set whole.
  const candidates = options.filter(({ kind, seeds }) => (kind === 'groups' ? !firstTest : seeds >= least));
  const groups = candidates.find(({ kind }) => kind === 'groups') ?? null;
  const smallest = candidates.find((option) => option.kind === 'fixed' && isEnough(option)) ?? null;
  if (groups && isEnough(groups) && (!smallest || meanSeeds(groups) <= smallest.seeds - WORTH_WAITING_FOR)) {
    return groups;
  }
  if (smallest) return smallest;
  const clearest = Math.max(...candidates.map(clearOf));
  return candidates.find((option) => clearOf(option) >= clearest - WORTH_MORE_SEED) ?? null;
}

const clearOf = ({ outcome }: TestOption) => outcome?.clear ?? 0;
const isEnough = (option: TestOption) => clearOf(option) >= CLEAR_OFTEN_ENOUGH;
const meanSeeds = ({ outcome, seeds }: TestOption) => outcome?.expectedSeeds ?? seeds;

function standingOf(belief: Belief, { poor, good }: ErrorGoal): Standing {
  let above = 0;
  let below = 0;
  belief.forEach((chance, step) => {
    if (viabilityOfStep(step) >= good) above += chance;
    else if (viabilityOfStep(step) <= poor) below += chance;
  });
  if (above >= VERY_LIKELY) return 'far-above';
  if (below >= VERY_LIKELY) return 'far-below';
  return 1 - above - below >= 0.5 ? 'near-line' : 'uncertain';
}
