import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { approachReaches } from '../../../lib/domain/moisture/approach-fit';
import { dryingProgress, type Weighing } from '../../../lib/domain/moisture/drying-progress';
import golden from '../../golden/drying-progress.json';

/** 460 g of dry matter from 12 %, levelling off at 5 %, 3 % of the difference an hour. */
function weighingsOn({ settles = 5, rate = 0.03, hours }: { settles?: number; rate?: number; hours: number[] }) {
  const [start, end] = [460 / 0.88, 460 / (1 - settles / 100)];
  return hours.map((at) => ({ hours: at, weightG: end + (start - end) * Math.exp(-rate * at) }));
}
const SEED = { startMoisturePercent: 12, targetMoisturePercent: 7, stepG: 0.1 };

function goldenWeighings(wanted: number): Weighing[] {
  return golden.weighings.filter((row) => row.case === wanted);
}

describe('against R (nls, and profiles by lm inside optimize and uniroot)', () => {
  test('time to the target and its interval agree to 1e-6', () => {
    let checked = 0;
    for (const row of golden.fits) {
      if (row.lowerHours === null) continue;
      const progress = dryingProgress({ ...row, weighings: goldenWeighings(row.case), stepG: row.stepG });
      const why = JSON.stringify({ row, progress });
      if (!progress.ok || progress.verdict.kind !== 'on-the-way') throw new Error(why);
      expect(Math.abs(progress.verdict.hours / (row.reachesHours ?? 0) - 1), why).toBeLessThan(1e-6);
      expect(Math.abs(progress.verdict.lowerHours / row.lowerHours - 1), why).toBeLessThan(1e-6);
      if (row.upperHours === null) expect(progress.verdict.upperHours, why).toBeNull();
      else expect(Math.abs((progress.verdict.upperHours ?? 0) / row.upperHours - 1), why).toBeLessThan(1e-6);
      checked += 1;
    }
    expect(checked).toBeGreaterThanOrEqual(4);
  });

  test('the level it settles at and its interval agree to 1e-6 points', () => {
    for (const row of golden.fits) {
      // A target out of reach, so that the level is what is asked for.
      const progress = dryingProgress({
        ...row,
        weighings: goldenWeighings(row.case),
        targetMoisturePercent: 0.01,
      });
      const why = JSON.stringify({ row, progress });
      if (!progress.ok || progress.verdict.kind !== 'levels-off-above') throw new Error(why);
      const moisture = (weightG: number) => (100 * (weightG - row.dryMatterG)) / weightG;
      expect(Math.abs(progress.verdict.settlesAtPercent - moisture(row.plateau)), why).toBeLessThan(1e-6);
      const { lowerPercent, upperPercent } = progress.verdict;
      if (row.lowerPlateau === null) expect(lowerPercent, why).toBeNull();
      else expect(Math.abs((lowerPercent ?? 0) - moisture(row.lowerPlateau)), why).toBeLessThan(1e-6);
      if (row.upperPlateau === null) expect(upperPercent, why).toBeNull();
      else expect(Math.abs((upperPercent ?? 0) - moisture(row.upperPlateau)), why).toBeLessThan(1e-6);
    }
  });
});

test('moisture now is read from the weight; a balance that shows whole grams leaves a tenth of a point open', () => {
  const progress = dryingProgress({
    weighings: [
      { hours: 0, weightG: 500 },
      { hours: 24, weightG: 480 },
    ],
    startMoisturePercent: 12,
    targetMoisturePercent: 7,
    stepG: 1,
  });
  // 440 g of dry matter: (480 - 440) / 480.
  expect(progress.ok && progress.moistureNowPercent).toBeCloseTo(8.3333, 4);
  expect(progress.ok && progress.moistureNowErrorPoints).toBeCloseTo(0.0955, 4);
  // Wf = 500 * 88 / 93.
  expect(progress.ok && progress.targetWeightG).toBeCloseTo(473.118, 3);
});

test('with fewer than three weighings no time is guessed', () => {
  const progress = dryingProgress({ ...SEED, weighings: weighingsOn({ hours: [0, 20] }) });
  expect(progress.ok && progress.verdict).toEqual({
    kind: 'cannot-say',
    reason: 'fewer-than-3-weighings',
    soonestHours: null,
  });
});

test('three weighings on a perfect curve are not taken for certainty: the step of the balance keeps a span open', () => {
  const progress = dryingProgress({ ...SEED, weighings: weighingsOn({ hours: [0, 12, 24] }) });
  if (!progress.ok || progress.verdict.kind !== 'on-the-way') throw new Error(JSON.stringify(progress));
  const { hours, lowerHours, upperHours } = progress.verdict;
  // W(t) reaches 7 % when exp(-0.03 t) = (460/0.93 - 460/0.95) / (460/0.88 - 460/0.95).
  expect(hours).toBeCloseTo(-Math.log((460 / 0.93 - 460 / 0.95) / (460 / 0.88 - 460 / 0.95)) / 0.03, 3);
  expect(lowerHours).toBeLessThan(hours - 0.1);
  expect(upperHours === null ? Number.POSITIVE_INFINITY : upperHours).toBeGreaterThan(hours + 0.1);
});

test('reached: the first weighing at the target is named, half a step above it counts', () => {
  const weighings = weighingsOn({ hours: [0, 24, 48, 72] });
  const progress = dryingProgress({ ...SEED, weighings });
  expect(progress.ok && progress.verdict).toEqual({ kind: 'reached', hours: 48 });
  const target = (500 * 88) / 93;
  const two = (last: number) =>
    dryingProgress({
      ...SEED,
      weighings: [
        { hours: 0, weightG: 500 },
        { hours: 9, weightG: target + last },
      ],
    });
  expect(two(0.049)).toMatchObject({ verdict: { kind: 'reached' } });
  expect(two(0.051)).toMatchObject({ verdict: { kind: 'cannot-say' } });
});

test('seed that dipped to the target and took up water again has not reached it', () => {
  const weighings = [...weighingsOn({ hours: [0, 24, 48] }), { hours: 60, weightG: 500 }];
  expect(dryingProgress({ ...SEED, weighings })).not.toMatchObject({ verdict: { kind: 'reached' } });
});

test('air too moist: levels off at 8.1 %, not going to reach 7 %', () => {
  const weighings = weighingsOn({ settles: 8.1, rate: 0.06, hours: [0, 12, 24, 36, 48, 72] });
  const progress = dryingProgress({ ...SEED, weighings });
  if (!progress.ok || progress.verdict.kind !== 'levels-off-above') throw new Error(JSON.stringify(progress));
  expect(progress.verdict.settlesAtPercent).toBeCloseTo(8.1, 2);
  expect(progress.verdict.sure).toBe(true);
});

test('the level above the target is not called sure while the target is still inside its interval', () => {
  const weighings = weighingsOn({ settles: 7.2, rate: 0.03, hours: [0, 8, 16, 24] });
  const progress = dryingProgress({ ...SEED, stepG: 1, weighings });
  expect(progress).toMatchObject({ verdict: { kind: 'levels-off-above', sure: false } });
});

test('a level known from the air answers earlier, and at once where the air is too moist', () => {
  const weighings = weighingsOn({ hours: [0, 4, 8] });
  const open = dryingProgress({ ...SEED, weighings });
  const known = dryingProgress({ ...SEED, weighings, settlesAtPercent: 5 });
  if (!open.ok || open.verdict.kind !== 'on-the-way') throw new Error(JSON.stringify(open));
  if (!known.ok || known.verdict.kind !== 'on-the-way') throw new Error(JSON.stringify(known));
  expect(known.verdict.upperHours).not.toBeNull();
  const width = (upper: number | null, lower: number) => (upper ?? Number.POSITIVE_INFINITY) - lower;
  expect(width(known.verdict.upperHours, known.verdict.lowerHours)).toBeLessThan(
    width(open.verdict.upperHours, open.verdict.lowerHours),
  );
  expect(dryingProgress({ ...SEED, weighings, settlesAtPercent: 7 })).toEqual({
    ok: false,
    reason: 'air-too-moist',
    settlesAtPercent: 7,
  });
});

test('a straight line gives no date, only the soonest', () => {
  const weighings = [0, 10, 20].map((hours) => ({ hours, weightG: 500 - 0.5 * hours }));
  const progress = dryingProgress({ ...SEED, weighings });
  // 500 - 0.5 t = 473.118 at t = 53.8.
  if (!progress.ok || progress.verdict.kind !== 'cannot-say') throw new Error(JSON.stringify(progress));
  expect(progress.verdict.reason).toBe('no-levelling-off-seen');
  expect(progress.verdict.soonestHours).toBeCloseTo(53.76, 2);
});

test('a straight line that has hardly begun is one too, though its end would lie above the dry matter', () => {
  const weighings = [0, 10, 20].map((hours) => ({ hours, weightG: 500 - 0.01 * hours }));
  expect(dryingProgress({ ...SEED, stepG: 0.01, weighings })).toMatchObject({
    verdict: { kind: 'cannot-say', reason: 'no-levelling-off-seen' },
  });
});

test('a last weighing above the target puts the moment ahead, also where the curve crossed before it', () => {
  const weighings = weighingsOn({ hours: [0, 5, 10, 15, 20, 25, 30, 35, 40, 44.5] }).map(({ hours, weightG }) => ({
    hours,
    weightG: hours === 44.5 ? weightG + 0.4 : weightG,
  }));
  const progress = dryingProgress({ ...SEED, weighings });
  if (!progress.ok || progress.verdict.kind !== 'on-the-way') throw new Error(JSON.stringify(progress));
  expect(approachReaches(progress.verdict.fit, progress.targetWeightG)).toBeLessThan(44.5);
  expect(progress.verdict.hours).toBe(44.5);
  expect(progress.verdict.lowerHours).toBeGreaterThanOrEqual(44.5);
});

test.each([
  ['no-change', [500, 500.1, 500]],
  ['taking-up-water', [500, 501, 503]],
])('%s is said instead of a curve', (reason, weights) => {
  const weighings = weights.map((weightG, i) => ({ hours: i * 10, weightG }));
  expect(dryingProgress({ ...SEED, weighings })).toMatchObject({ verdict: { kind: 'cannot-say', reason } });
});

test('a weighing below the dry matter is named', () => {
  const weighings = [...weighingsOn({ hours: [0, 10, 20] }), { hours: 30, weightG: 459 }];
  expect(dryingProgress({ ...SEED, weighings })).toEqual({
    ok: false,
    reason: 'lighter-than-its-dry-matter',
    hours: 30,
  });
});

test('neither the order of the weighings nor the start of the clock changes the answer', () => {
  fc.assert(
    fc.property(fc.double({ min: -500, max: 500, noNaN: true }), (shift) => {
      const weighings = goldenWeighings(4);
      const at = (list: Weighing[]) =>
        dryingProgress({ weighings: list, startMoisturePercent: 16, targetMoisturePercent: 10, stepG: 0.1 });
      const [plain, moved] = [at(weighings), at(weighings.map((w) => ({ ...w, hours: w.hours + shift })).reverse())];
      if (!plain.ok || plain.verdict.kind !== 'on-the-way') throw new Error(JSON.stringify(plain));
      if (!moved.ok || moved.verdict.kind !== 'on-the-way') throw new Error(JSON.stringify(moved));
      expect(moved.verdict.hours - shift).toBeCloseTo(plain.verdict.hours, 2);
      expect(moved.verdict.lowerHours - shift).toBeCloseTo(plain.verdict.lowerHours, 2);
    }),
    { seed: 20260316, numRuns: 10 },
  );
});

test('refuses what is no weighing, step or level', () => {
  const weighings = weighingsOn({ hours: [0, 10, 20] });
  expect(() => dryingProgress({ ...SEED, weighings: [] })).toThrow(/empty/);
  expect(() => dryingProgress({ ...SEED, weighings: [{ hours: 0, weightG: 0 }] })).toThrow(/0 g at 0 h/);
  expect(() => dryingProgress({ ...SEED, weighings, stepG: 0 })).toThrow(/stepG/);
  expect(() => dryingProgress({ ...SEED, weighings, level: 1 })).toThrow(/level/);
});
