/** Simulated jars whose end is known: the 90 % interval of the time to the target must hold it in about 90 of 100. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { expect, test } from 'vitest';
import { dryingProgress } from '../../../lib/domain/moisture/drying-progress';
import { normalQuantile } from '../../../lib/domain/statistics/normal-distribution';

/** 460 g of dry matter from 12 %, levelling off at 5 %, 3 % of the difference an hour; 7 % is reached after 43.6 hours. */
const DRY_G = 460;
const [START_G, END_G, TARGET_G] = [DRY_G / 0.88, DRY_G / 0.95, DRY_G / 0.93];
const RATE = 0.03;
const TRUE_HOURS = -Math.log((TARGET_G - END_G) / (START_G - END_G)) / RATE;

function coverage(hours: number[], scatterG: number, jars: number, seed: number): number {
  const generator = xoroshiro128plus(seed);
  const normal = () => normalQuantile(Math.min(1 - 1e-12, Math.max(1e-12, uniformFloat64(generator))));
  let inside = 0;
  for (let jar = 0; jar < jars; jar++) {
    const weighings = hours.map((at) => {
      const weightG = END_G + (START_G - END_G) * Math.exp(-RATE * at) + scatterG * normal();
      return { hours: at, weightG: Math.round(weightG * 100) / 100 };
    });
    const progress = dryingProgress({
      weighings,
      // Dry matter is what is known of the jar, so the moisture of its first weighing follows from it.
      startMoisturePercent: 100 * (1 - DRY_G / (weighings[0]?.weightG ?? Number.NaN)),
      targetMoisturePercent: 7,
      stepG: 0.01,
    });
    if (!progress.ok) continue;
    const { verdict } = progress;
    if (verdict.kind === 'on-the-way') {
      if (verdict.lowerHours <= TRUE_HOURS && (verdict.upperHours ?? Infinity) >= TRUE_HOURS) inside += 1;
    } else if (verdict.kind === 'levels-off-above' && !verdict.sure) inside += 1;
    else if (verdict.kind === 'cannot-say') inside += 1;
  }
  return inside / jars;
}

test('weighed six times over 36 hours with a scatter of 0.2 g: in 86 to 95 of 100', () => {
  const held = coverage([0, 6, 12, 20, 28, 36], 0.2, 300, 20260323);
  expect(held).toBeGreaterThan(0.86);
  expect(held).toBeLessThan(0.95);
}, 60_000);
