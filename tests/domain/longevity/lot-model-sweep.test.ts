/**
 * The lot model against the dense grid over random lots: half as a bank has them, half with priors, tests and likeness such as
 * nobody would choose. LOT_MODEL_SWEEP=2000 runs the long sweep whose errors docs/methods/lot-model.md reports.
 */
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { expect, it } from 'vitest';
import { fastLogCdf } from '../../../lib/domain/longevity/fast-log-cdf';
import {
  fitLot,
  type LotPrior,
  type LotTest,
  probabilityBelow,
  viabilityAt,
} from '../../../lib/domain/longevity/lot-model';
import { normalCdf, normalQuantile } from '../../../lib/domain/statistics/normal-distribution';
import { denseGridLotModel } from '../../support/dense-grid-lot-model';

const CASES = Number(process.env.LOT_MODEL_SWEEP ?? 16);
const PROMISED = 0.003;
const BELOW = [0.01, 0.3, 0.6, 0.7, 0.8, 0.85, 0.95, 0.99] as const;

const generator = xoroshiro128plus(20261125);
const uniform = (): number => ((generator.next() >>> 0) + 0.5) / 2 ** 32;
const normal = (): number => normalQuantile(uniform());
const pick = <T>(choices: readonly T[]): T => choices[Math.floor(uniform() * choices.length)] as T;
const logUniform = (from: number, to: number): number => from * (to / from) ** uniform();

interface Case {
  prior: LotPrior;
  tests: LotTest[];
  rho: number;
}

function ordinary(): Case {
  const initial = { mean: 1.75, sd: 0.75 };
  const logRate = pick([
    { mean: 0, sd: 0.5 },
    { mean: 0.3, sd: 0.9 },
  ]);
  const start = 1.8 + 0.5 * normal();
  const rate = Math.exp(0.6 * normal());
  const count = pick([0, 1, 2, 3, 3, 3, 4, 6]);
  const span = logUniform(0.005, 4);
  const tests = Array.from({ length: count }, (_, index): LotTest => {
    const probitsLost = (span * (index + uniform())) / count;
    const sown = pick([20, 50, 100, 100, 200, 400]);
    const alive = normalCdf(start - rate * probitsLost);
    let germinated = 0;
    for (let seed = 0; seed < sown; seed += 1) if (uniform() < alive) germinated += 1;
    return { probitsLost, germinated, sown };
  });
  return { prior: { initial, logRate }, tests, rho: pick([0, 0, 0, 0, 0.02, 0.1]) };
}

function strange(): Case {
  const initial = { mean: pick([-1, 0, 1.75, 1.75, 3]), sd: logUniform(0.02, 5) };
  const logRate = { mean: pick([-1, 0, 0.3, 1.5]), sd: logUniform(0.02, 5) };
  const tests = Array.from({ length: Math.floor(5 * uniform()) }, (): LotTest => {
    const sown = pick([1, 10, 50, 100, 200, 400]);
    const probitsLost = pick([0, logUniform(0.01, 3), logUniform(0.1, 50)]);
    return {
      probitsLost,
      germinated: pick([0, sown, Math.round(uniform() * sown), Math.round(uniform() * sown)]),
      sown,
    };
  });
  return { prior: { initial, logRate }, tests, rho: pick([0, 0, 0, 0.02, 0.1, 0.4]) };
}

it.each([
  ['as a bank has them', ordinary],
  ['such as nobody would choose', strange],
])(
  'is within 0.003 of a dense grid over random lots %s',
  (_kind, invent) => {
    let worstChance = 0;
    let worstBand = 0;
    for (let i = 0; i < CASES / 2; i += 1) {
      const { prior, tests, rho } = invent();
      const posterior = fitLot({ tests, prior, intraReplicateCorrelation: rho });
      const dense = denseGridLotModel({ tests, prior, rho }, { rates: 500, perRate: 300, logCdf: fastLogCdf });
      const lot = JSON.stringify({ prior, tests, rho });
      for (let query = 0; query < 10; query += 1) {
        const probitsLost = pick([0, logUniform(0.01, 5), logUniform(0.01, 5), logUniform(1, 50)]);
        const threshold = pick(BELOW);
        const found = probabilityBelow(posterior, { probitsLost, threshold });
        const error = Math.abs(found - dense.chanceBelow(probitsLost, normalQuantile(threshold)));
        worstChance = Math.max(worstChance, error);
        expect(error, `P(below ${threshold} at ${probitsLost}): ${lot}`).toBeLessThan(PROMISED);
      }
      for (let query = 0; query < 2; query += 1) {
        const probitsLost = pick([0, logUniform(0.01, 3), logUniform(0.1, 30)]);
        const { lower, median, upper } = viabilityAt(posterior, { probitsLost, level: 0.9 });
        for (const [value, chance] of [
          [lower, 0.05],
          [median, 0.5],
          [upper, 0.95],
        ] as const) {
          const error = Math.abs(value - dense.viabilityQuantile(probitsLost, chance));
          worstBand = Math.max(worstBand, error);
          expect(error, `viability at ${probitsLost}, ${chance}: ${lot}`).toBeLessThan(PROMISED);
        }
      }
    }
    if (process.env.LOT_MODEL_SWEEP) {
      process.stdout.write(`${_kind}: chances ${worstChance.toFixed(5)}, bands ${worstBand.toFixed(5)}\n`);
    }
  },
  Math.max(60_000, 2000 * CASES),
);
