import { expect, test } from 'vitest';
import { approachAt } from '../../../lib/domain/moisture/approach-fit';
import { dryingProgress } from '../../../lib/domain/moisture/drying-progress';
import { dryingWeights } from '../../../lib/domain/moisture/drying-weights';

const TARE = 120;
/** 460 g of dry matter from 12 %, levelling off at a moisture, 3 % of the difference an hour. */
function runTo(settles: number, hours: number[]) {
  const [start, end] = [460 / 0.88, 460 / (1 - settles / 100)];
  const weighings = hours.map((at) => ({
    hours: at,
    weightG: end + (start - end) * Math.exp(-0.03 * at) + 0.02 * Math.sin(9 * at),
  }));
  const progress = dryingProgress({ weighings, startMoisturePercent: 12, targetMoisturePercent: 7, stepG: 0.1 });
  if (!progress.ok) throw new Error(progress.reason);
  return { weighings, progress, picture: dryingWeights(progress, weighings, 7, TARE) };
}

test('dots are the weighings with the tray, and the target is the weight to stop at', () => {
  const { weighings, picture } = runTo(5, [0, 8, 16, 24]);
  weighings.forEach(({ hours, weightG }, index) => {
    expect(picture.weighed[index]?.hours).toBe(hours);
    expect(picture.weighed[index]?.weightG).toBeCloseTo(weightG + TARE, 9);
  });
  // 460 g of dry matter at 7 % weigh 494.6 g
  expect(picture.targetWeightG).toBeCloseTo(TARE + 460 / 0.93, 9);
});

test('the curve is the fit, and the band is the interval in which the target is reached', () => {
  const { progress, picture } = runTo(5, [0, 8, 16, 24]);
  const { verdict } = progress;
  if (verdict.kind !== 'on-the-way') throw new Error(verdict.kind);
  for (const { hours, weightG } of picture.curve) {
    expect(weightG).toBeCloseTo(TARE + approachAt(verdict.fit, hours), 6);
  }
  expect(picture.reachedBetween?.fromHours).toBe(verdict.lowerHours);
  expect(picture.reachedBetween?.toHours).toBeLessThanOrEqual(picture.toHours);
});

test('seed that levels off above the target has no time to show', () => {
  const { progress, picture } = runTo(8, [0, 12, 24, 48, 96]);
  expect(progress.verdict.kind).toBe('levels-off-above');
  expect(picture.reachedBetween).toBeNull();
});

test('a later end beyond the picture is cut off there and said to be open', () => {
  const { progress, picture } = runTo(6.9, [0, 8, 16, 24]);
  const { verdict } = progress;
  if (verdict.kind !== 'on-the-way') throw new Error(verdict.kind);
  expect(verdict.upperHours === null || verdict.upperHours > picture.toHours).toBe(true);
  expect(picture.reachedBetween).toMatchObject({ toHours: picture.toHours, openEnded: true });
});
