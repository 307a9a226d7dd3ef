import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLot, probabilityBelow } from '../../../lib/domain/longevity/lot-model';
import { probitsUntilBelow } from '../../../lib/domain/longevity/probits-until-below';

const prior = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0.3, sd: 0.9 } };
const tests = [
  { probitsLost: 0, germinated: 96, sown: 100 },
  { probitsLost: 0.3, germinated: 92, sown: 100 },
];

describe('probitsUntilBelow', () => {
  it('undoes the chance of being below', () => {
    const posterior = fitLot({ tests, prior });
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.double({ min: 0.3, max: 0.85, noNaN: true }),
        (chance, threshold) => {
          const probitsLost = probitsUntilBelow(posterior, { threshold, chance });
          if (probitsLost === null) throw new Error('never reached');
          expect(Math.abs(probabilityBelow(posterior, { probitsLost, threshold }) - chance)).toBeLessThan(1e-4);
        },
      ),
      { seed: 11, numRuns: 100 },
    );
  });

  it('is 0 for a lot that is that likely below already', () => {
    const dead = fitLot({ tests: [{ probitsLost: 0, germinated: 10, sown: 100 }], prior });
    expect(probitsUntilBelow(dead, { threshold: 0.85, chance: 0.5 })).toBe(0);
  });

  it('takes for a lot with a known start and rate the probits between start and threshold', () => {
    // Phi(1.5 - D) = 0.5 at D = 1.5
    const known = fitLot({ tests: [], prior: { initial: { mean: 1.5, sd: 0.001 }, logRate: { mean: 0, sd: 0.001 } } });
    expect(probitsUntilBelow(known, { threshold: 0.5, chance: 0.5 })).toBeCloseTo(1.5, 3);
  });

  it('finds the same from any guess', () => {
    const posterior = fitLot({ tests, prior });
    const found = probitsUntilBelow(posterior, { threshold: 0.8, chance: 0.1 }) as number;
    for (const start of [1e-12, 0.001, 0.3, 5, 1e9]) {
      const other = probitsUntilBelow(posterior, { threshold: 0.8, chance: 0.1, start }) as number;
      expect(Math.abs(other / found - 1)).toBeLessThan(1e-4);
    }
  });

  it('is null for a lot that does not age within a million probits', () => {
    const still = fitLot({ tests, prior: { ...prior, logRate: { mean: -40, sd: 0.1 } } });
    expect(probitsUntilBelow(still, { threshold: 0.85, chance: 0.5 })).toBeNull();
  });

  it('refuses a chance of 0 or 1', () => {
    const posterior = fitLot({ tests, prior });
    expect(() => probitsUntilBelow(posterior, { threshold: 0.85, chance: 0 })).toThrow(RangeError);
    expect(() => probitsUntilBelow(posterior, { threshold: 0.85, chance: 1 })).toThrow(RangeError);
  });
});
