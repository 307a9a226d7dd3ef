/*
 * A test against a minimum germination standard, taking the test's uncertainty seriously.
 *
 * A seed law compares the bare figure; this asks whether the lot itself is above or below, and says so only when the
 * whole interval is. Standards shown are one country's, for orientation.
 */
import { binomialInterval } from '../statistics/binomial-interval';
import type { UnevenDishesInterval } from '../statistics/uneven-dishes-interval';
import type { TestSummary } from './result';

export type StandardVerdict = 'meets' | 'below' | 'too-uncertain';

/** Where the lot likely lies, as proportions. */
interface Bounds {
  lower: number;
  upper: number;
  level: number;
}

export interface StandardComparison {
  verdict: StandardVerdict;
  /** share of seeds that counts towards the standard, 0-1 */
  proportion: number;
  interval: Bounds;
  /** the verdict in plain words */
  sentence: string;
}

/**
 * Compares a germination test with a minimum standard.
 *
 * @param input.summary         from `summariseTest`; its interval level is used
 * @param input.minimumPercent  percent, above 0 and at most 100
 * @param input.countsHardSeed  whether hard seed counts as germinated; true by default, as in 7 CFR 201.31
 * @param input.uneven          from `intervalIfUneven` over dishes counted in the same way: judged by it where there is one,
 *                              since the plain interval is too narrow for dishes that differ by more than chance
 * @returns 'meets' when the whole interval is at or above the minimum, 'below' when the whole interval is below it,
 *          otherwise 'too-uncertain'; with the figures and a sentence
 * @throws RangeError when the minimum is outside its range
 * Checked in tests/domain/germination/minimum-standard.test.ts
 */
export function compareWithStandard({
  summary,
  minimumPercent,
  countsHardSeed = true,
  uneven = null,
}: {
  summary: TestSummary;
  minimumPercent: number;
  countsHardSeed?: boolean;
  uneven?: UnevenDishesInterval | null;
}): StandardComparison {
  if (!(minimumPercent > 0 && minimumPercent <= 100)) {
    throw new RangeError(`compareWithStandard: minimumPercent must be above 0 and at most 100, got ${minimumPercent}`);
  }
  const { totals, seeds, germination } = summary;
  const counted = totals.normal + (countsHardSeed ? totals.hard : 0);
  const allows = uneven?.ok === true;
  const interval = allows
    ? uneven
    : binomialInterval({ successes: counted, trials: seeds, level: germination.interval.level });
  const verdict = judge(interval, minimumPercent);
  const proportion = counted / seeds;
  const hardIncluded = countsHardSeed && totals.hard > 0 ? ', hard seed included' : '';
  return {
    verdict,
    proportion,
    interval: { lower: interval.lower, upper: interval.upper, level: interval.level },
    sentence:
      `${Math.round(proportion * 100)} % germinated${hardIncluded}; ` +
      `the lot is likely between ${likelyRange(interval, minimumPercent, verdict)} %${allows ? ', allowing for uneven dishes' : ''}. ` +
      closing(verdict, minimumPercent),
  };
}

function judge(interval: Bounds, minimumPercent: number): StandardVerdict {
  if (interval.lower * 100 >= minimumPercent) return 'meets';
  return interval.upper * 100 < minimumPercent ? 'below' : 'too-uncertain';
}

/** Rounded outwards to whole percents, except where that would put the minimum on the wrong side of the bound. */
function likelyRange(interval: Bounds, minimumPercent: number, verdict: StandardVerdict): string {
  const lower = Math.floor(interval.lower * 100);
  const upper = Math.ceil(interval.upper * 100);
  const lowerShown = verdict === 'meets' && lower < minimumPercent ? `${minimumPercent}` : `${lower}`;
  const upperShown = verdict === 'below' && upper >= minimumPercent ? `just under ${minimumPercent}` : `${upper}`;
  return `${lowerShown} and ${upperShown}`;
}

function closing(verdict: StandardVerdict, minimumPercent: number): string {
  switch (verdict) {
    case 'meets':
      return `It meets the minimum of ${minimumPercent} %.`;
    case 'below':
      return `It is below the minimum of ${minimumPercent} %.`;
    case 'too-uncertain':
      return `The minimum of ${minimumPercent} % lies within that: too uncertain to say, test more seed to decide.`;
  }
}
