import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { expect, test } from 'vitest';
import { dayReached } from '../../../../lib/domain/germination/time-course/day-reached';
import { fitGerminationCurve } from '../../../../lib/domain/germination/time-course/fitted-curve';
import { germinationCurve } from '../../../../lib/domain/germination/time-course/germination-curve';
import { normalCdf, normalQuantile } from '../../../../lib/domain/statistics/normal-distribution';
import { dish } from './golden-cases';

const TESTS = 300;

test('over simulated tests the 95 % intervals hold the truth about 95 times in 100', () => {
  // 100 seeds, 85 % able to germinate, log-normal with middle 4.5 days and spread 0.6, inspected daily for 15 days.
  const random = xoroshiro128plus(20261125);
  const uniform = () => (random.next() >>> 0) / 2 ** 32;
  const share = (day: number) => normalCdf((Math.log(day) - Math.log(4.5)) / 0.6);
  const byDay15 = share(15);
  const halfOfGerminated = 4.5 * Math.exp(0.6 * normalQuantile(byDay15 / 2));
  const held = { curve: 0, half: 0, middle: 0, limit: 0 };
  for (let number = 0; number < TESTS; number++) {
    const found = new Array<number>(15).fill(0);
    for (let seed = 0; seed < 100; seed++) {
      if (uniform() >= 0.85) continue;
      const day = Math.ceil(4.5 * Math.exp(0.6 * normalQuantile(uniform())));
      if (day >= 1 && day <= 15) found[day - 1] = (found[day - 1] ?? 0) + 1;
    }
    const dishes = [
      dish(
        100,
        found.map((count, i) => [i + 1, count] as const),
      ),
    ];
    const curve = germinationCurve(dishes);
    const fit = fitGerminationCurve(dishes, { shape: 'log-normal' });
    if (!curve.ok || !fit.ok) throw new Error('expected a curve and a fit');
    const day5 = curve.points.find(({ day }) => day === 5);
    if (day5 && day5.lower <= 0.85 * share(5) && 0.85 * share(5) <= day5.upper) held.curve++;
    const half = dayReached(curve, { share: 0.5, of: 'germinated' });
    if (half.ok && (half.lower ?? 0) <= halfOfGerminated && halfOfGerminated <= (half.upper ?? 99)) held.half++;
    if (fit.middleDayInterval.lower <= 4.5 && 4.5 <= fit.middleDayInterval.upper) held.middle++;
    if (fit.limitInterval.lower <= 0.85 && 0.85 <= fit.limitInterval.upper) held.limit++;
  }
  // Four standard errors of a count of 300 at 95 %: 5 points.
  for (const [what, count] of Object.entries(held)) {
    expect(count / TESTS, what).toBeGreaterThan(0.9);
    expect(count / TESTS, what).toBeLessThanOrEqual(1);
  }
  if (process.env.SHOW_COVERAGE) console.info(held);
}, 60_000);
