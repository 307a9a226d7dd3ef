/**
 * The lot model by brute force: a grid of thousands of rates by hundreds of initial viabilities, plain sums, no
 * interpolation, no cleverness. Slow, and what the real one is held against.
 */
import gammaln from '@stdlib/math-base-special-gammaln';
import type { LotPrior, LotTest } from '../../lib/domain/longevity/lot-model';
import { normalCdf, normalLogCdf } from '../../lib/domain/statistics/normal-distribution';

export type DenseGrid = {
  chanceBelow: (probitsLost: number, z: number) => number;
  viabilityQuantile: (probitsLost: number, chance: number) => number;
  medianRate: number;
};

type Row = { rate: number; weight: number; low: number; step: number; cumulative: Float64Array };

const SUB = 6;

/**
 * @param rates       number of rates on the grid
 * @param perRate     number of initial viabilities at each rate
 * @param logCdf      log Phi; a faster one may be passed in for long sweeps
 */
export function denseGridLotModel(
  { tests, prior, rho = 0 }: { tests: readonly LotTest[]; prior: LotPrior; rho?: number },
  {
    rates = 4000,
    perRate = 200,
    logCdf = normalLogCdf,
  }: { rates?: number; perRate?: number; logCdf?: (x: number) => number } = {},
): DenseGrid {
  const { initial, logRate } = prior;
  const theta = (1 - rho) / rho;
  const logLikelihood = (probit: number, { germinated, sown }: LotTest): number => {
    const dead = sown - germinated;
    if (rho === 0) {
      return (germinated ? germinated * logCdf(probit) : 0) + (dead ? dead * logCdf(-probit) : 0);
    }
    const rising = (logA: number, count: number) => {
      // log Gamma(a + n) - log Gamma(a), with log a kept apart so that a may be as small as it likes
      const a = Math.exp(logA);
      return count === 0 ? 0 : logA + gammaln(a + count) - gammaln(a + 1);
    };
    return rising(Math.log(theta) + logCdf(probit), germinated) + rising(Math.log(theta) + logCdf(-probit), dead);
  };
  const logDensity = (K: number, b: number): number => {
    const rate = Math.exp(b);
    let sum = -0.5 * ((K - initial.mean) / initial.sd) ** 2 - 0.5 * ((b - logRate.mean) / logRate.sd) ** 2;
    for (const test of tests) sum += logLikelihood(K - rate * test.probitsLost, test);
    return sum;
  };
  const golden = 0.5 * (Math.sqrt(5) - 1);
  const bestK = (b: number): { K: number; top: number } => {
    let low = initial.mean - 60 * initial.sd;
    let high = initial.mean + 60 * initial.sd;
    let x1 = high - golden * (high - low);
    let x2 = low + golden * (high - low);
    let f1 = logDensity(x1, b);
    let f2 = logDensity(x2, b);
    while (high - low > 1e-4) {
      if (f1 < f2) {
        low = x1;
        x1 = x2;
        f1 = f2;
        x2 = low + golden * (high - low);
        f2 = logDensity(x2, b);
      } else {
        high = x2;
        x2 = x1;
        f2 = f1;
        x1 = high - golden * (high - low);
        f1 = logDensity(x1, b);
      }
    }
    const K = 0.5 * (low + high);
    return { K, top: logDensity(K, b) };
  };
  let from = logRate.mean - 60 * logRate.sd;
  let to = Math.min(300, logRate.mean + 60 * logRate.sd);
  for (let zoom = 0; zoom < 15; zoom += 1) {
    const count = 240;
    const step = (to - from) / count;
    const tops = Array.from({ length: count + 1 }, (_, i) => bestK(from + i * step).top);
    const best = Math.max(...tops);
    const first = Math.max(0, tops.findIndex((top) => top > best - 30) - 1);
    const last = Math.min(count, tops.findLastIndex((top) => top > best - 30) + 1);
    const before = to - from;
    to = from + last * step;
    from += first * step;
    if (to - from > 0.8 * before) break;
  }
  const drop = 25;
  const cell = (to - from) / rates;
  const rows: Row[] = [];
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < rates; i += 1) {
    const b = from + (i + 0.5) * cell;
    const { K, top } = bestK(b);
    const edge = (direction: number): number => {
      let near = 0;
      let far = initial.sd;
      while (top - logDensity(K + direction * far, b) < drop) far *= 2;
      for (let k = 0; k < 25; k += 1) {
        const middle = 0.5 * (near + far);
        if (top - logDensity(K + direction * middle, b) < drop) near = middle;
        else far = middle;
      }
      return K + direction * far;
    };
    const low = edge(-1);
    const step = (edge(1) - low) / perRate;
    const cumulative = new Float64Array(perRate + 1);
    let before = Math.exp(logDensity(low, b) - top);
    for (let j = 1; j <= perRate; j += 1) {
      const here = Math.exp(logDensity(low + j * step, b) - top);
      cumulative[j] = (cumulative[j - 1] as number) + 0.5 * (before + here) * step;
      before = here;
    }
    const mass = cumulative[perRate] as number;
    for (let j = 0; j <= perRate; j += 1) cumulative[j] = (cumulative[j] as number) / mass;
    rows.push({ rate: Math.exp(b), weight: top + Math.log(mass), low, step, cumulative });
    highest = Math.max(highest, top + Math.log(mass));
  }
  let total = 0;
  for (const row of rows) {
    row.weight = Math.exp(row.weight - highest);
    total += row.weight;
  }
  const chanceBelow = (probitsLost: number, z: number): number => {
    let chance = 0;
    let weights = 0;
    // Seen along the rate the distribution function can be a step, so each row stands for SUB slices of its cell, with
    // the rate, the place of the row and the weight running straight between the rows beside it.
    for (let k = 0; k < rows.length; k += 1) {
      const row = rows[k] as Row;
      const left = rows[k - 1] ?? row;
      const right = rows[k + 1] ?? row;
      for (let slice = 0; slice < SUB; slice += 1) {
        const shift = (slice + 0.5) / SUB - 0.5;
        const other = shift < 0 ? left : right;
        const share = Math.abs(shift);
        const weight = (row.weight + share * (other.weight - row.weight)) / SUB;
        const rate = row.rate * Math.exp(shift * cell);
        const place = row.low + share * (other.low - row.low);
        const step = row.step + share * (other.step - row.step);
        weights += weight;
        const position = (z + rate * probitsLost - place) / step;
        if (position <= 0) continue;
        if (position >= perRate) {
          chance += weight;
          continue;
        }
        const i = Math.floor(position);
        const c = row.cumulative[i] as number;
        chance += weight * (c + (position - i) * ((row.cumulative[i + 1] as number) - c));
      }
    }
    return chance / weights;
  };
  const viabilityQuantile = (probitsLost: number, chance: number): number => {
    let low = -9;
    let high = 9;
    for (let i = 0; i < 45; i += 1) {
      const middle = 0.5 * (low + high);
      if (chanceBelow(probitsLost, middle) < chance) low = middle;
      else high = middle;
    }
    return normalCdf(0.5 * (low + high));
  };
  let half = 0;
  const medianRow = rows.find((row) => {
    half += row.weight;
    return half >= 0.5 * total;
  });
  return { chanceBelow, viabilityQuantile, medianRate: medianRow?.rate ?? Number.NaN };
}
