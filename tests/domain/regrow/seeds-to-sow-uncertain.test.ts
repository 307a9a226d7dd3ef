import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitLot, type LotPosterior, viabilityAt } from '../../../lib/domain/longevity/lot-model';
import { chanceFromSowing } from '../../../lib/domain/regrow/chance-from-sowing';
import { seedsToSow, seedsToSowUncertain } from '../../../lib/domain/regrow/seeds-to-sow';
import { denseChanceOfRaising, denseChances } from '../../support/dense-raising';

const prior = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0, sd: 0.5 } };
const borrowed = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0.3, sd: 0.9 } };

const LOTS: [string, LotPosterior][] = [
  ['no test', fitLot({ tests: [], prior })],
  ['no test, borrowed constants', fitLot({ tests: [], prior: borrowed })],
  ['one test', fitLot({ tests: [{ probitsLost: 0.1, germinated: 92, sown: 100 }], prior })],
  ['every seed grew', fitLot({ tests: [{ probitsLost: 0, germinated: 50, sown: 50 }], prior: borrowed })],
  ['no seed grew', fitLot({ tests: [{ probitsLost: 0.5, germinated: 0, sown: 50 }], prior })],
  [
    'two tests of 400',
    fitLot({
      tests: [
        { probitsLost: 0.1, germinated: 372, sown: 400 },
        { probitsLost: 0.9, germinated: 290, sown: 400 },
      ],
      prior,
    }),
  ],
  [
    'contradictory tests',
    fitLot({
      tests: [
        { probitsLost: 0.3, germinated: 60, sown: 100 },
        { probitsLost: 0.6, germinated: 90, sown: 100 },
      ],
      prior: borrowed,
    }),
  ],
];

describe.each(LOTS)('%s', (_name, posterior) => {
  const cases = [0, 0.3, 1.5, 5].flatMap((probitsLost) =>
    [0.5, 0.9, 1].map((emergence) => ({
      probitsLost,
      emergence,
      distribution: denseChances(posterior, probitsLost, emergence),
    })),
  );

  test('the seeds to sow differ from dense integration by less than 1 % or one seed', () => {
    for (const { probitsLost, emergence, distribution } of cases) {
      for (const plants of [1, 5, 20, 60, 200, 1000]) {
        for (const assurance of [0.5, 0.8, 0.95, 0.99]) {
          const seeds = seedsToSowUncertain({ plants, posterior, probitsLost, emergence, assurance });
          if (seeds === Number.POSITIVE_INFINITY) {
            expect(denseChanceOfRaising(plants, 10_000_000, distribution)).toBeLessThan(assurance + 0.001);
            continue;
          }
          const slack = Math.max(1, 0.01 * seeds);
          const where = JSON.stringify({ plants, probitsLost, emergence, assurance, seeds });
          expect(denseChanceOfRaising(plants, Math.ceil(seeds + slack), distribution), where).toBeGreaterThanOrEqual(
            assurance,
          );
          expect(denseChanceOfRaising(plants, Math.floor(seeds - slack - 1), distribution), where).toBeLessThan(
            assurance,
          );
        }
      }
    }
  });

  test('the chance of raising the plants from a given number of seeds is within 0.003 of dense integration', () => {
    for (const { probitsLost, emergence, distribution } of cases) {
      for (const plants of [1, 5, 20, 60, 200, 1000]) {
        for (const factor of [1, 1.1, 1.4, 2, 4, 20]) {
          const seeds = Math.ceil(plants * factor);
          const found = chanceFromSowing({ posterior, probitsLost, emergence }, plants, seeds);
          const difference = found - denseChanceOfRaising(plants, seeds, distribution);
          expect(Math.abs(difference), JSON.stringify({ plants, seeds, probitsLost, emergence })).toBeLessThan(0.003);
        }
      }
    }
  });
});

test('a lot known to the last seed needs what the plain binomial says', () => {
  const posterior = fitLot({
    tests: [{ probitsLost: 0, germinated: 800_000, sown: 1_000_000 }],
    prior: { initial: { mean: 0.8416, sd: 0.01 }, logRate: { mean: 0, sd: 0.01 } },
  });
  for (const plants of [1, 10, 40, 300]) {
    const known = seedsToSow({ plants, chancePerSeed: 0.8 * 0.9 });
    const uncertain = seedsToSowUncertain({ plants, posterior, probitsLost: 0, emergence: 0.9 });
    expect(Math.abs(uncertain - known)).toBeLessThanOrEqual(Math.max(1, 0.01 * known));
  }
});

test('not knowing costs seed: more than the median viability alone would ask for', () => {
  const posterior = fitLot({ tests: [], prior: borrowed });
  const { median } = viabilityAt(posterior, { probitsLost: 0.5 });
  const uncertain = seedsToSowUncertain({ plants: 40, posterior, probitsLost: 0.5, emergence: 0.8 });
  expect(uncertain).toBeGreaterThan(1.2 * seedsToSow({ plants: 40, chancePerSeed: median * 0.8 }));
});

test('a lot that is more likely dead than the assurance allows cannot be relied on in any number', () => {
  const posterior = fitLot({ tests: [{ probitsLost: 0.5, germinated: 0, sown: 200 }], prior });
  expect(seedsToSowUncertain({ plants: 40, posterior, probitsLost: 6, emergence: 0.8 })).toBe(Number.POSITIVE_INFINITY);
});

test('more plants, more ageing, poorer emergence and more assurance all ask for more seed', () => {
  const posterior = LOTS[2]?.[1] as LotPosterior;
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 300 }),
      fc.double({ min: 0, max: 1.5, noNaN: true }),
      fc.double({ min: 0.3, max: 0.95, noNaN: true }),
      fc.double({ min: 0.5, max: 0.97, noNaN: true }),
      (plants, probitsLost, emergence, assurance) => {
        const sow = (change: object) =>
          seedsToSowUncertain({ plants, posterior, probitsLost, emergence, assurance, ...change });
        const seeds = sow({});
        const slack = Math.max(1, 0.01 * seeds);
        expect(sow({ plants: plants + 10 })).toBeGreaterThan(seeds - slack);
        expect(sow({ probitsLost: probitsLost + 0.2 })).toBeGreaterThan(seeds - slack);
        expect(sow({ emergence: emergence * 0.9 })).toBeGreaterThan(seeds - slack);
        expect(sow({ assurance: assurance + 0.02 })).toBeGreaterThan(seeds - slack);
      },
    ),
    { seed: 20260119 },
  );
});

test.each([
  [{ plants: 0 }, /plants/],
  [{ emergence: 0 }, /emergence/],
  [{ emergence: 80 }, /emergence.*80/],
  [{ assurance: 1 }, /assurance/],
  [{ probitsLost: -1 }, /probitsLost/],
  [{ probitsLost: Number.NaN }, /probitsLost/],
])('refuses %o', (change, message) => {
  const posterior = LOTS[0]?.[1] as LotPosterior;
  const call = () => seedsToSowUncertain({ plants: 10, posterior, probitsLost: 0.1, emergence: 0.8, ...change });
  expect(call).toThrow(message);
  expect(call).toThrow(RangeError);
});
