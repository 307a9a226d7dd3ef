import { expect, test } from 'vitest';
import { fitConditions } from '../../../../lib/domain/longevity/storage-experiment/condition-fits';
import {
  type LotCurve,
  moisturePicture,
  type SurvivalPanel,
  survivalPanels,
} from '../../../../lib/domain/longevity/storage-experiment/experiment-pictures';
import { fitStorageExperiment } from '../../../../lib/domain/longevity/storage-experiment/fit-storage-experiment';
import { sigmaDays } from '../../../../lib/domain/longevity/viability-equation';
import { normalCdf } from '../../../../lib/domain/statistics/normal-distribution';
import { condition, goldenExperiment } from './simulated-experiments';

const golden = goldenExperiment('uneven_dishes');
const conditions = fitConditions(golden.rows);
const whole = fitStorageExperiment(golden.rows);
if (!whole.ok) throw new Error(whole.message);

test('each condition has a panel with every seed counted once, dishes of a day together', () => {
  const panels = survivalPanels(golden.rows, conditions, whole);
  expect(panels).toHaveLength(6);
  let sown = 0;
  for (const { lots, longestDays } of panels) {
    for (const { points } of lots) {
      expect(points.map((point) => point.days)).toEqual([...new Set(points.map((p) => p.days))].sort((a, b) => a - b));
      for (const point of points) {
        sown += point.sown;
        expect(point.lower).toBeLessThanOrEqual(point.proportion);
        expect(point.upper).toBeGreaterThanOrEqual(point.proportion);
        expect(point.days).toBeLessThanOrEqual(longestDays);
      }
    }
  }
  expect(sown).toBe(golden.sown.reduce((sum, n) => sum + n, 0));
});

test('curves begin at the lot’s K and fall by the fitted sigma', () => {
  const [panel] = survivalPanels(golden.rows, conditions, whole) as [SurvivalPanel];
  const { curve } = panel.lots[1] as LotCurve;
  const K = whole.lots[1]?.initialProbits as number;
  expect(curve[0]).toEqual({ days: 0, proportion: normalCdf(K) });
  const end = curve.at(-1) as { days: number; proportion: number };
  expect(end.days).toBe(panel.longestDays);
  const sigma = sigmaDays(whole.constants, panel.condition);
  expect(end.proportion).toBeCloseTo(normalCdf(K - end.days / sigma), 12);
});

test('without a fit of the whole each condition keeps its own curve, or none', () => {
  const rows = [
    ...condition(8, 20, [
      [0, 48],
      [100, 40],
      [200, 20],
    ]),
    ...condition(8, 40, [
      [0, 48],
      [10, 48],
      [20, 48],
    ]),
  ];
  const panels = survivalPanels(rows, fitConditions(rows), null);
  expect(panels.map((panel) => [panel.curveOf, panel.lots[0]?.curve.length])).toEqual([
    ['condition', 61],
    ['none', 0],
  ]);
});

test('on logarithmic axes the lines of all temperatures fall by CW', () => {
  const { points, lines } = moisturePicture(conditions, whole);
  expect(points).toHaveLength(conditions.filter((one) => one.ok).length);
  expect(lines.map((line) => line.temperatureC)).toEqual([20, 40]);
  for (const { ends } of lines) {
    const [dry, moist] = ends as [(typeof ends)[0], (typeof ends)[0]];
    const slope = Math.log10(moist.sigmaDays / dry.sigmaDays) / Math.log10(moist.moisturePercent / dry.moisturePercent);
    expect(slope).toBeCloseTo(-whole.constants.CW, 9);
  }
  for (const { sigmaDays: sigma, lower, upper } of points) expect(lower * upper).toBeCloseTo(sigma * sigma, 3 - 6);
  expect(moisturePicture(conditions, null).lines).toEqual([]);
});
