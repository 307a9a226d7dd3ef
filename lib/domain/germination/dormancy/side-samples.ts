/*
 * How much of a lot is alive when some seed stayed hard or fresh and only part of it was shown to be alive.
 *
 * After the count some or all of the hard seeds are scarified, some or all of the fresh ones chilled or stained, and
 * counted by themselves: a side sample. What the side sample shows is carried over to the seeds of that kind that were
 * not looked at, and both samples enter the interval.
 *
 * The interval is Wilson's, extended: all alive shares A with (found - A)^2 <= z^2 V(A), where V is the variance that the
 * found share would have if A were true, the other unknowns (how much of the lot is hard, how much of that alive) at their
 * most likely values given A. When every hard and fresh seed was looked at, or there was none, it is Wilson's interval
 * itself.
 */
import { normalQuantile } from '../../statistics/normal-distribution';
import { requireProportion } from '../../statistics/require-proportion';
import { rootBetween } from '../../statistics/root-between';
import { likelyUnlooked } from './likely-unlooked';
import type { SideSample } from './side-sample';

export interface TestWithSideSamples {
  /** seeds set in the test: count, integer, >= 1 */
  seeds: number;
  /** normal seedlings: count, integer, >= 0 */
  normal: number;
  hard: SideSample;
  fresh: SideSample;
  /** probability in (0, 1), default 0.95 */
  level?: number;
}

export type AliveWithSideSamples =
  | {
      ok: true;
      /** alive share of the lot, 0-1 */
      proportion: number;
      /** proportion in [0, 1] */
      lower: number;
      /** proportion in [0, 1] */
      upper: number;
      level: number;
      /** share of the test's seeds that neither grew nor were looked at, 0-1: what rests on the side sample alone */
      carriedOver: number;
    }
  | {
      ok: false;
      /** there are hard, or fresh, seeds and nobody looked at one */
      reason: 'hard-not-looked-at' | 'fresh-not-looked-at';
      /** alive share if none of the seeds nobody looked at is alive, and if all are */
      between: readonly [number, number];
    };

const BOUND_TOLERANCE = 1e-15;
const JUST_INSIDE = 1e-12;

/**
 * Alive share of a lot from a test and its side samples.
 *
 * @param input  see TestWithSideSamples; normal, hard and fresh together at most the seeds set
 * @returns the share and its interval, or a refusal with the two extremes; relative error below 1e-9
 * @throws RangeError when a count is not an integer in its range or the level outside (0, 1)
 * @see Wilson (1927) for the form; the extension is our own: docs/methods/hard-and-dormant-seed.md
 * Checked against R (expectation-maximisation, `uniroot`): tests/golden/side-samples.json
 */
export function aliveWithSideSamples(input: TestWithSideSamples): AliveWithSideSamples {
  const { seeds, normal, hard, fresh, level = 0.95 } = requireTest(input);
  const parts = [hard, fresh].filter((part) => part.seeds > 0);
  const unlooked = parts.filter(({ looked }) => looked === 0);
  if (unlooked.length > 0) return refusal({ seeds, normal, hard, fresh });

  const found = parts.reduce((sum, part) => sum + (part.seeds * part.alive) / part.looked, normal) / seeds;
  const z = normalQuantile((1 - level) / 2);
  const variance = (alive: number) => {
    if (alive <= 0 || alive >= 1) return 0;
    const likely = likelyUnlooked({ seeds, normal, parts, alive });
    const uncertain = parts.reduce((sum, part, i) => {
      const { share, aliveOfIt } = likely[i] as { share: number; aliveOfIt: number };
      return sum + share * aliveOfIt * (1 - aliveOfIt) * (part.seeds / part.looked - 1);
    }, 0);
    return (alive * (1 - alive) + uncertain) / seeds;
  };
  const excess = (alive: number) => (found - alive) ** 2 - z * z * variance(alive);
  // At 0 and at 1 nothing is uncertain, and the excess is 0 there when that is what was found: start just inside.
  const inside = Math.min(1 - JUST_INSIDE, Math.max(JUST_INSIDE, found));
  return {
    ok: true,
    proportion: found,
    lower: found === 0 ? 0 : rootBetween(excess, inside, 0, BOUND_TOLERANCE),
    upper: found === 1 ? 1 : rootBetween(excess, inside, 1, BOUND_TOLERANCE),
    level,
    carriedOver: parts.reduce((sum, part) => sum + part.seeds - part.looked, 0) / seeds,
  };
}

function refusal({ seeds, normal, hard, fresh }: Pick<TestWithSideSamples, 'seeds' | 'normal' | 'hard' | 'fresh'>) {
  const least = normal + hard.alive + fresh.alive;
  const most = least + hard.seeds - hard.looked + fresh.seeds - fresh.looked;
  const reason = hard.seeds > 0 && hard.looked === 0 ? 'hard-not-looked-at' : 'fresh-not-looked-at';
  return { ok: false, reason, between: [least / seeds, most / seeds] } as const;
}

function requireTest(input: TestWithSideSamples): TestWithSideSamples {
  const whole = (name: string, value: number, from: number, to: number) => {
    if (!Number.isSafeInteger(value) || value < from || value > to) {
      throw new RangeError(`aliveWithSideSamples: ${name} must be a whole number from ${from} to ${to}, got ${value}`);
    }
  };
  const { seeds, normal, hard, fresh, level = 0.95 } = input;
  whole('seeds', seeds, 1, Number.MAX_SAFE_INTEGER);
  whole('normal', normal, 0, seeds);
  whole('hard.seeds', hard.seeds, 0, seeds - normal);
  whole('fresh.seeds', fresh.seeds, 0, seeds - normal - hard.seeds);
  for (const [name, part] of [
    ['hard', hard],
    ['fresh', fresh],
  ] as const) {
    whole(`${name}.looked`, part.looked, 0, part.seeds);
    whole(`${name}.alive`, part.alive, 0, part.looked);
  }
  requireProportion('aliveWithSideSamples', 'level', level, true);
  return input;
}
