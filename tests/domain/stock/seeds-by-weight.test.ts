import fc from 'fast-check';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, test } from 'vitest';
import { normalQuantile } from '../../../lib/domain/statistics/normal-distribution';
import { gramsForSeeds, seedsByWeight } from '../../../lib/domain/stock/seeds-by-weight';
import golden from '../../golden/seeds-by-weight.json';

const SAMPLE = {
  weightsG: [0.2224, 0.2134, 0.213, 0.2116, 0.2145, 0.2071, 0.2116, 0.2125],
  seedsPerReplicate: 100,
  stepG: 0.0001,
};

test('agrees with R root finding, rounded outward; grams to 1e-9', () => {
  let unbounded = 0;
  for (const row of golden.rows) {
    const sample = { weightsG: row.weightsG, seedsPerReplicate: row.seedsPerReplicate, stepG: row.sampleStepG };
    const ours = seedsByWeight({ weightG: row.weightG, sample, stepG: row.stepG, level: row.level });
    const why = JSON.stringify({ row, ours });
    if (row.lower === null || row.upper === null) {
      unbounded += 1;
      expect(ours, why).toEqual({ ok: false, reason: 'seed-weight-too-uncertain' });
    } else {
      expect(ours, why).toMatchObject({ lower: Math.floor(row.lower + 1e-6), upper: Math.ceil(row.upper - 1e-6) });
    }
    const grams = gramsForSeeds({ seeds: row.seeds, sample, stepG: row.stepG, assurance: row.level });
    expect(Math.abs(grams.weightG / row.gramsG - 1), why).toBeLessThan(1e-9);
  }
  expect(unbounded).toBeGreaterThan(10);
  expect(golden.rows.length - unbounded).toBeGreaterThan(100);
});

describe('laws', () => {
  const packets = fc.record({
    weightG: fc.double({ min: 0.05, max: 500, noNaN: true }),
    stepG: fc.constantFrom(0, 0.01, 0.1),
  });

  test('the interval holds the estimate; more assurance or a coarser balance never narrows it', () => {
    fc.assert(
      fc.property(packets, ({ weightG, stepG }) => {
        const plain = seedsByWeight({ weightG, sample: SAMPLE, stepG });
        const surer = seedsByWeight({ weightG, sample: SAMPLE, stepG, level: 0.99 });
        const coarser = seedsByWeight({ weightG, sample: SAMPLE, stepG: stepG + 1 });
        if (!plain.ok || !surer.ok || !coarser.ok) throw new Error('no interval');
        expect(plain.lower).toBeLessThanOrEqual(plain.seeds);
        expect(plain.upper).toBeGreaterThanOrEqual(plain.seeds);
        for (const wider of [surer, coarser]) {
          expect(wider.lower).toBeLessThanOrEqual(plain.lower);
          expect(wider.upper).toBeGreaterThanOrEqual(plain.upper);
        }
      }),
      { seed: 20260319 },
    );
  });

  test('more seeds or more assurance weigh more, and an even chance asks for the expected weight', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20_000 }),
        fc.double({ min: 0.5, max: 0.98, noNaN: true }),
        (seeds, assurance) => {
          const here = gramsForSeeds({ seeds, sample: SAMPLE, stepG: 0.01, assurance });
          expect(here.weightG).toBeGreaterThanOrEqual(here.expectedG);
          expect(gramsForSeeds({ seeds: seeds + 1, sample: SAMPLE, stepG: 0.01, assurance }).weightG).toBeGreaterThan(
            here.weightG,
          );
          expect(
            gramsForSeeds({ seeds, sample: SAMPLE, stepG: 0.01, assurance: assurance + 0.01 }).weightG,
          ).toBeGreaterThan(here.weightG);
        },
      ),
      { seed: 20260320 },
    );
    const even = gramsForSeeds({ seeds: 300, sample: SAMPLE, stepG: 0.01, assurance: 0.5 });
    expect(even.weightG).toBe(even.expectedG);
  });

  test('grams weighed out for N seeds, at 97.5 %, are those whose 95 % interval begins at N', () => {
    const { weightG } = gramsForSeeds({ seeds: 500, sample: SAMPLE, stepG: 0.01, assurance: 0.975 });
    expect(seedsByWeight({ weightG, sample: SAMPLE, stepG: 0.01, level: 0.95 })).toMatchObject({ lower: 500 });
  });
});

test('replicates that a coarse balance shows alike are not taken for exact', () => {
  const coarse = { weightsG: Array.from({ length: 8 }, () => 0.3), seedsPerReplicate: 100, stepG: 0.1 };
  const packet = seedsByWeight({ weightG: 3, sample: coarse, stepG: 0.1 });
  if (!packet.ok) throw new Error(packet.reason);
  expect(packet.seeds).toBe(1000);
  expect(packet.lower).toBeLessThan(850);
});

test('a weight that the balance hardly shows may be no seed at all, never fewer than none', () => {
  expect(seedsByWeight({ weightG: 0.01, sample: SAMPLE, stepG: 1 })).toMatchObject({ ok: true, seeds: 5, lower: 0 });
});

describe('simulated packets (seed weights normal, variation 25 % a seed)', () => {
  // Weights of seeds drawn one by one, rounded as the balance rounds; 4000 packets give a standard error of 0.4 points.
  const generator = xoroshiro128plus(20260321);
  const normal = () => normalQuantile(Math.min(1 - 1e-12, Math.max(1e-12, uniformFloat64(generator))));
  const seedsWeigh = (seeds: number) => seeds * 0.05 + Math.sqrt(seeds) * 0.0125 * normal();
  const weighed = (weight: number, step: number) => Math.round(weight / step) * step;
  const RUNS = 4000;

  test('the 95 % interval holds the true number in 94 to 98 of 100, and the grams hold enough in 94 to 97 of 100', () => {
    let inside = 0;
    let enough = 0;
    for (let run = 0; run < RUNS; run++) {
      const weightsG = Array.from({ length: 8 }, () => weighed(seedsWeigh(100), 0.01));
      const sample = { weightsG, seedsPerReplicate: 100, stepG: 0.01 };
      const packet = seedsByWeight({ weightG: weighed(seedsWeigh(400), 0.01), sample, stepG: 0.01 });
      if (packet.ok && packet.lower <= 400 && packet.upper >= 400) inside += 1;
      const { weightG } = gramsForSeeds({ seeds: 400, sample, stepG: 0.01 });
      if (seedsWeigh(400) <= weighed(weightG, 0.01)) enough += 1;
    }
    expect(inside / RUNS).toBeGreaterThan(0.94);
    expect(inside / RUNS).toBeLessThan(0.98);
    expect(enough / RUNS).toBeGreaterThan(0.94);
    expect(enough / RUNS).toBeLessThan(0.97);
  });
});

test('refuses weights, samples and shares outside their range', () => {
  const packet = { weightG: 3, sample: SAMPLE, stepG: 0.01 };
  expect(() => seedsByWeight({ ...packet, weightG: 0 })).toThrow(/weightG.*got 0/);
  expect(() => seedsByWeight({ ...packet, level: 1 })).toThrow(/level/);
  expect(() => seedsByWeight({ ...packet, stepG: -1 })).toThrow(/stepG/);
  expect(() => seedsByWeight({ ...packet, sample: { ...SAMPLE, seedsPerReplicate: 0 } })).toThrow(/seedsPerReplicate/);
  expect(() => gramsForSeeds({ seeds: 0, sample: SAMPLE, stepG: 0 })).toThrow(/seeds.*got 0/);
  expect(() => gramsForSeeds({ seeds: 9, sample: SAMPLE, stepG: 0, assurance: 0.4 })).toThrow(/assurance/);
});
