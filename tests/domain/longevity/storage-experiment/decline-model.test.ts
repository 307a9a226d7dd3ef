import { describe, expect, test } from 'vitest';
import type { DeclinePoint } from '../../../../lib/domain/longevity/storage-experiment/decline-likelihood';
import { derivativesAt, logLikelihood } from '../../../../lib/domain/longevity/storage-experiment/decline-likelihood';
import { fitDecline } from '../../../../lib/domain/longevity/storage-experiment/decline-model';
import { fitProbit } from '../../../../lib/domain/statistics/probit-regression';
import { goldenRows } from '../../../support/golden-table';

interface Row {
  name: string;
  x: number[];
  successes: number[];
  trials: number[];
  intercept: number;
  slope: number;
  v11: number;
  v12: number;
  v22: number;
}

const pointsOf = ({ x, successes, trials }: Pick<Row, 'x' | 'successes' | 'trials'>): DeclinePoint[] =>
  x.map((days, i) => ({
    ...{ lot: 0, days, sown: trials[i] as number, germinated: successes[i] as number },
    ...{ offset: 0, columns: days > 0 ? [1] : [0] },
  }));

function fitted(...args: Parameters<typeof fitDecline>) {
  const fit = fitDecline(...args);
  if (!fit.ok) throw new Error(`expected a fit, got ${fit.reason}`);
  return fit;
}

describe('one lot in one condition is ordinary probit regression', () => {
  const declining = [
    ...goldenRows<Row>('probit-regression', 'fits'),
    ...goldenRows<Row>('probit-regression', 'nearSeparation'),
    // A line that passes from alive to dead within a thousandth of its time begins thousands of probits up: no lot does.
  ].filter((row) => row.slope < 0 && row.x.every((x) => x >= 0) && row.intercept < 100);

  test.each(declining.map((row) => [row.name, row] as const))('as R glm has it: %s', (_, row) => {
    const fit = fitted(pointsOf(row), 1, [[Math.log(1 / Math.max(...row.x))]]);
    const rate = Math.exp(fit.coefficients[0] as number);
    const close = (actual: number, expected: number, digits: number) =>
      expect(Math.abs(actual / expected - 1)).toBeLessThan(digits);
    close(fit.initialProbits[0] as number, row.intercept, 1e-7);
    close(rate, -row.slope, 1e-7);
    // The rate is fitted by its logarithm: d slope = -rate d ln rate.
    close(fit.covariance[0]?.[0] as number, row.v11, 1e-6);
    close(-rate * (fit.covariance[0]?.[1] as number), row.v12, 1e-6);
    close(rate * rate * (fit.covariance[1]?.[1] as number), row.v22, 1e-6);
  });

  test('the classic insecticide trial, counting the dead as they fall with log dose', () => {
    // Counts: Finney (1971), Probit Analysis; survivors, so that the line falls. Times are log10 dose from the weakest.
    const x = [10.2, 7.7, 5.1, 3.8, 2.6].map((dose) => Math.log10(dose) - Math.log10(2.6));
    const data = { x, successes: [50 - 44, 49 - 42, 46 - 24, 48 - 16, 50 - 6], trials: [50, 49, 46, 48, 50] };
    const probit = fitProbit(data);
    if (!probit.ok) throw new Error(probit.message);
    const fit = fitted(pointsOf(data), 1, [[0]]);
    expect(fit.initialProbits[0]).toBeCloseTo(probit.intercept, 10);
    expect(Math.exp(fit.coefficients[0] as number)).toBeCloseTo(-probit.slope, 10);
    expect(Math.exp(fit.coefficients[0] as number)).toBeCloseTo(4.213197, 6);
  });

  test('a start a thousandfold off is found back from', () => {
    const row = declining[0] as Row;
    const near = fitted(pointsOf(row), 1, [[Math.log(1 / Math.max(...row.x))]]);
    for (const factor of [1e-3, 1e3]) {
      const far = fitted(pointsOf(row), 1, [[Math.log(factor / Math.max(...row.x))]]);
      expect(far.coefficients[0]).toBeCloseTo(near.coefficients[0] as number, 9);
    }
  });
});

describe('refuses', () => {
  const rising = { x: [0, 10, 20], successes: [40, 44, 47], trials: [50, 50, 50] };
  const level = { x: [0, 10, 20], successes: [45, 45, 45], trials: [50, 50, 50] };
  test.each([
    ['rising', rising],
    ['level', level],
  ])('seed that does not decline, naming the counts: %s', (_, data) => {
    expect(fitDecline(pointsOf(data), 1, [[Math.log(0.01)]])).toEqual({
      ...{ ok: false, reason: 'no-decline', withoutDecline: [1, 2] },
    });
  });
  test('all alive, then all dead', () => {
    const sharp = { x: [0, 10, 20], successes: [50, 50, 0], trials: [50, 50, 50] };
    expect(fitDecline(pointsOf(sharp), 1, [[Math.log(0.1)]])).toMatchObject({ ok: false, reason: 'separation' });
  });
  test('a column that repeats another', () => {
    const twice = pointsOf({ x: [0, 10, 20], successes: [48, 40, 20], trials: [50, 50, 50] }).map((point) => ({
      ...point,
      columns: [...point.columns, 2 * (point.columns[0] as number)],
    }));
    expect(fitDecline(twice, 1, [[Math.log(0.1), 0]])).toMatchObject({ ok: false, reason: 'confounded' });
  });
  test('to begin without a start', () => {
    expect(() => fitDecline(pointsOf(rising), 1, [])).toThrow(RangeError);
  });
});

test('score and observed curvature are the derivatives of the log-likelihood', () => {
  const points: DeclinePoint[] = [
    { lot: 0, days: 0, sown: 50, germinated: 47, offset: 0, columns: [0, 0] },
    { lot: 0, days: 30, sown: 50, germinated: 40, offset: 0.1, columns: [1, 0.7] },
    { lot: 1, days: 60, sown: 50, germinated: 12, offset: 0.2, columns: [1, 1.1] },
    { lot: 1, days: 90, sown: 40, germinated: 0, offset: 0.2, columns: [1, 1.1] },
  ];
  const vector = [1.6, 1.1, -4.2, 0.5];
  const at = (v: number[]) => ({ initialProbits: v.slice(0, 2), coefficients: v.slice(2) });
  const { score, observed } = derivativesAt(points, at(vector));
  const h = 1e-5;
  const moved = (j: number, by: number) => vector.map((value, i) => (i === j ? value + by : value));
  for (let j = 0; j < 4; j++) {
    const [up, down] = [at(moved(j, h)), at(moved(j, -h))];
    const slope = (logLikelihood(points, up) - logLikelihood(points, down)) / (2 * h);
    expect(Math.abs((score[j] as number) - slope)).toBeLessThan(1e-6 * (1 + Math.abs(slope)));
    const [scoreUp, scoreDown] = [derivativesAt(points, up).score, derivativesAt(points, down).score];
    for (let k = 0; k < 4; k++) {
      const bend = -((scoreUp[k] as number) - (scoreDown[k] as number)) / (2 * h);
      expect(Math.abs((observed[j]?.[k] as number) - bend)).toBeLessThan(1e-6 * (1 + Math.abs(bend)));
    }
  }
});
