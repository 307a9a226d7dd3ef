import { expect, test } from 'vitest';
import { dryingCurve } from '../../../lib/domain/moisture/drying-curve';
import { dryingProgress } from '../../../lib/domain/moisture/drying-progress';

/** 88 g of dry matter from 12 %, levelling off at a moisture, 4 % of the difference an hour, on a clock begun at 100. */
function jar(settles: number, hours: number[]) {
  const [start, end] = [100, 88 / (1 - settles / 100)];
  const weighings = hours.map((at) => ({ hours: 100 + at, weightG: end + (start - end) * Math.exp(-0.04 * at) }));
  const progress = dryingProgress({ weighings, startMoisturePercent: 12, targetMoisturePercent: 7, stepG: 0.01 });
  if (!progress.ok) throw new Error(progress.reason);
  return { weighings, progress, picture: dryingCurve(progress, weighings, 7) };
}

test('weighings are drawn as moisture on their own clock, and the curve runs through them', () => {
  const { picture } = jar(5, [0, 10, 20, 30]);
  expect(picture.weighed[0]).toMatchObject({ hours: 100 });
  expect(picture.weighed[0]?.moisturePercent).toBeCloseTo(12, 6);
  expect(picture.curve[0]?.moisturePercent).toBeCloseTo(12, 3);
  expect(picture.curve).toHaveLength(81);
});

test('the picture goes on past the moment of the target, where the curve is below it', () => {
  const { picture, progress } = jar(5, [0, 10, 20, 24]);
  if (progress.verdict.kind !== 'on-the-way') throw new Error(progress.verdict.kind);
  expect(picture.toHours).toBeGreaterThan(progress.verdict.hours);
  expect(picture.curve.at(-1)?.moisturePercent).toBeLessThan(7);
});

test('it never runs further than three times the hours watched', () => {
  const { picture } = jar(6.95, [0, 3, 6, 9]);
  expect(picture.toHours).toBeLessThanOrEqual(100 + 3 * 9 + 1e-9);
});

test('where the seed levels off above the target it goes on by half; without a fit it ends at the last weighing', () => {
  expect(jar(9, [0, 20, 40, 80]).picture.toHours).toBeCloseTo(100 + 120, 9);
  const { picture } = jar(5, [0, 20]);
  expect(picture).toMatchObject({ curve: [], toHours: 120 });
});
