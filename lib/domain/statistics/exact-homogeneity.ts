/*
 * Whether several counts share one proportion, exactly: Fisher's test for more than two samples. Given only how many
 * succeeded in all, every way to share them among the samples has a known chance; the p-value is the chance of a share no
 * more likely than the one seen.
 *
 * The ways are gone through one by one, so there is a limit to their number; beyond it the samples are large, and the
 * chi-square test does as well.
 */
import { logChoose } from './binomial';
import { requireCounts } from './require-counts';

/** About a tenth of a second. */
const MOST_WAYS = 1_000_000;
/** Splits that are equally likely on paper differ in the last digits here; R's fisher.test allows the same slack. */
const EQUAL_LIKELIHOOD_SLACK = 1e-7;

export type ExactHomogeneity = { ok: true; pValue: number } | { ok: false; reason: 'too-many-ways' };

/**
 * Two-sided exact p-value that all samples come from one proportion.
 *
 * @param samples  at least one: successes and trials, integers, 0 <= successes <= trials
 * @returns the p-value in (0, 1], 1 for a single sample and where all or none succeeded; or a refusal, when there are more
 *          than a million ways to share the successes
 * @throws RangeError when there is no sample or a count is not an integer in its range
 * @see Freeman & Halton (1951), Biometrika 38:141-149 (from memory)
 * Checked against R `fisher.test` on 2 x k tables: tests/golden/exact-homogeneity.json
 */
export function exactHomogeneity(samples: readonly { successes: number; trials: number }[]): ExactHomogeneity {
  if (samples.length === 0) throw new RangeError('exactHomogeneity: samples must hold at least one, got none');
  for (const { successes, trials } of samples) requireCounts('exactHomogeneity', successes, trials);
  const counted = withRarerOutcome(samples);
  const together = counted.reduce((sum, { successes }) => sum + successes, 0);
  const sizes = counted.map(({ trials }) => trials);
  if (waysToShare(sizes, together) > MOST_WAYS) return { ok: false, reason: 'too-many-ways' };

  const logTotal = logChoose(
    sizes.reduce((sum, size) => sum + size, 0),
    together,
  );
  const logWays = sizes.map((size) =>
    Array.from({ length: Math.min(size, together) + 1 }, (_, taken) => logChoose(size, taken)),
  );
  const seen = counted.reduce((sum, { successes }, i) => sum + (logWays[i]?.[successes] ?? 0), 0) - logTotal;
  const limit = seen + Math.log1p(EQUAL_LIKELIHOOD_SLACK);
  const roomAfter = sizes.map((_, i) => sizes.slice(i + 1).reduce((sum, size) => sum + size, 0));

  let pValue = 0;
  const share = (sample: number, left: number, logChance: number): void => {
    const own = logWays[sample] as number[];
    if (sample === sizes.length - 1) {
      const logP = logChance + (own[left] as number);
      if (logP <= limit) pValue += Math.exp(logP);
      return;
    }
    const fewest = Math.max(0, left - (roomAfter[sample] as number));
    const most = Math.min(left, own.length - 1);
    for (let taken = fewest; taken <= most; taken++)
      share(sample + 1, left - taken, logChance + (own[taken] as number));
  };
  share(0, together, -logTotal);
  return { ok: true, pValue: Math.min(1, pValue) };
}

/** Sharing the few failures of good seed gives the same chances as sharing its many successes, in fewer ways. */
function withRarerOutcome(samples: readonly { successes: number; trials: number }[]) {
  const successes = samples.reduce((sum, sample) => sum + sample.successes, 0);
  const trials = samples.reduce((sum, sample) => sum + sample.trials, 0);
  if (2 * successes <= trials) return samples;
  return samples.map((sample) => ({ successes: sample.trials - sample.successes, trials: sample.trials }));
}

/** How many ways there are to take `together` from samples of these sizes, counted before any is gone through. */
function waysToShare(sizes: readonly number[], together: number): number {
  let ways = new Float64Array(together + 1);
  ways[0] = 1;
  for (const size of sizes) {
    const next = new Float64Array(together + 1);
    let window = 0;
    for (let taken = 0; taken <= together; taken++) {
      window += ways[taken] as number;
      if (taken > size) window -= ways[taken - size - 1] as number;
      next[taken] = window;
    }
    ways = next;
  }
  return ways[together] as number;
}
