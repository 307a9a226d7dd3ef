/*
 * A tetrazolium or cut test beside the forecast of its lot. The test does not enter the forecast (decision 028); this says
 * only whether the two can both be right.
 */
import type { ViabilityTestResult } from './viability-test';

/**
 * 'agrees': the two overlap; 'above': the test finds more alive than the forecast's band holds; 'below': less; 'allows': a
 * cut test, which gives no more than a ceiling, and the forecast lies under it.
 */
export type BesideForecast = 'agrees' | 'above' | 'below' | 'allows';

/**
 * Whether a viability test and a forecast of the same seed fit together: whether the test's interval and the forecast's
 * band have a point in common. That two ranges lie apart demands more than that they differ at the level of either,
 * so that 'above' and 'below' are cautious verdicts.
 *
 * @param test      what the test shows, and its interval; proportions 0-1
 * @param forecast  the lot's band; proportions 0-1, lower <= upper
 * @returns a verdict; a cut test is never 'agrees' or 'above', since firm seed may be dead
 * @throws RangeError when the band is upside down
 * @see the rule is our own
 * Checked in tests/domain/germination/dormancy/beside-forecast.test.ts
 */
export function besideForecast(
  test: Pick<ViabilityTestResult, 'shows'> & { interval: { lower: number; upper: number } },
  forecast: { lower: number; upper: number },
): BesideForecast {
  if (!(forecast.lower <= forecast.upper)) {
    throw new RangeError(`besideForecast: forecast must have lower <= upper, got ${forecast.lower}-${forecast.upper}`);
  }
  if (test.interval.upper < forecast.lower) return 'below';
  if (test.shows === 'at-most-alive') return 'allows';
  return test.interval.lower > forecast.upper ? 'above' : 'agrees';
}
