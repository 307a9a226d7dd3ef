import { formatDate } from '@/app/_format/figures';
import type { TestSummary } from '@/lib/domain/germination/result';
import type { TwoResults } from '@/lib/domain/germination/two-results';
import type { Interval } from '@/lib/domain/statistics/binomial-interval';
import type { UnevenDishesInterval } from '@/lib/domain/statistics/uneven-dishes-interval';

/** The level of the intervals on these screens, and how it is said. */
export const TEST_LEVEL = 0.95;
export const LEVEL_IN_WORDS = '19 times in 20';

/** Below this chance the replicates are said to differ. */
const SURPRISING = 0.05;

/**
 * A share of seeds as people say it: '81 in 100', never '100 in 100' for what is not quite all.
 *
 * Checked in tests/app/result-words.test.ts
 */
export function inHundred(count: number, seeds: number): string {
  const rounded = Math.round((100 * count) / seeds);
  if (rounded === 100 && count < seeds) return 'over 99 in 100';
  if (rounded === 0 && count > 0) return 'under 1 in 100';
  return `${rounded} in 100`;
}

/** Bounds in whole percent, rounded outwards, so that the interval said is never narrower than the one computed. */
export function boundsOutwards({ interval }: { interval: Pick<Interval, 'lower' | 'upper'> }): {
  lower: number;
  upper: number;
} {
  return { lower: Math.floor(interval.lower * 100), upper: Math.ceil(interval.upper * 100) };
}

/**
 * What a test says of its lot, for the top of its page; what stands between ** is bold.
 *
 * Checked in tests/app/result-words.test.ts
 */
export function resultInWords(summary: TestSummary): string {
  const { totals, seeds } = summary;
  const alive = totals.normal + totals.hard + totals.fresh;
  const germination = boundsOutwards(summary.germination);
  const sentence = `**${inHundred(totals.normal, seeds)} seeds germinated**; ${LEVEL_IN_WORDS} the truth lies between ${germination.lower} and ${germination.upper}.`;
  if (alive === totals.normal) return sentence;
  const viability = boundsOutwards(summary.viability);
  const others = [totals.hard > 0 ? 'hard' : null, totals.fresh > 0 ? 'fresh' : null].filter((word) => word !== null);
  return `${sentence} With ${others.join(' and ')} seed **${inHundred(alive, seeds)} are alive**, between ${viability.lower} and ${viability.upper}.`;
}

/**
 * Whether the replicates differ by more than chance, where the range alone has not said so already.
 *
 * @returns a sentence, or null when there is nothing to add
 * Checked in tests/app/result-words.test.ts
 */
export function heterogeneityInWords({ heterogeneity, withinTolerance }: TestSummary): string | null {
  if (heterogeneity === null || heterogeneity.pValue >= SURPRISING) return null;
  const oneIn = Math.round(1 / heterogeneity.pValue);
  const rarity = oneIn > 1000 ? 'less than once in 1000 tests' : `about once in ${oneIn} tests`;
  const chance = `Taken together they differ as much as chance alone would make them ${rarity}`;
  return withinTolerance === false
    ? `${chance}, so the truth may lie outside the limits above.`
    : `${chance}: take the limits above as too narrow.`;
}

/**
 * How far the truth may lie off once the dishes need not be alike.
 *
 * @param interval    from `intervalIfUneven`
 * @param dishCount   how many dishes it rests on
 * @returns a sentence, or null while the dishes agree
 * Checked in tests/app/result-words.test.ts
 */
export function unevenInWords(interval: UnevenDishesInterval | null, dishCount: number): string | null {
  if (interval === null || !interval.ok) return null;
  const { lower, upper } = boundsOutwards({ interval });
  const few = dishCount < 4 ? ` ${dishCount === 2 ? 'Two' : 'Three'} dishes tell little of it.` : '';
  return `Allowing for dishes as uneven as these, the truth lies between ${lower} and ${upper} in 100.${few}`;
}

/**
 * This test beside the lot's test before it.
 *
 * @param before  the earlier test: its number, day and counts
 * @param now     this test's counts
 * @param result  from `compareTwoResults`
 * @param trusted whether this test's replicates agree; a fall found by a doubtful test is not believed
 * Checked in tests/app/result-words.test.ts
 */
export function comparedInWords(
  before: { number: string; finishedOn: string; seeds: number; normal: number },
  now: { seeds: number; normal: number },
  result: TwoResults,
  trusted: boolean,
): string {
  const earlier = `${before.number} of ${formatDate(before.finishedOn)} gave ${Math.round((100 * before.normal) / before.seeds)} %`;
  const points = Math.round(result.difference);
  const apart = points === 0 ? 'less than 1 point apart' : `${points} ${points === 1 ? 'point' : 'points'} apart`;
  const usual =
    result.tolerance === null ? 'no more than chance explains' : `and ${result.tolerance} is usual between two tests`;
  if (result.compatible) return `${earlier}: ${apart}, ${usual}. The two agree.`;
  const beyond = result.tolerance === null ? 'more than chance explains' : `and only ${result.tolerance} is usual`;
  const fell = before.normal / before.seeds > now.normal / now.seeds;
  if (!fell) return `${earlier}: ${apart}, ${beyond}. A lot gains germination only as dormancy wears off.`;
  const loss = trusted
    ? 'Seed ages, so the loss is believable.'
    : 'Do not believe the loss before the lot is tested again.';
  return `${earlier}: ${apart}, ${beyond}. ${loss}`;
}
