import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceOfKeepingAllele, plantsToKeepAllele } from '../../../../lib/domain/regrow/diversity/keeping-alleles';
import { expectClose, goldenRows } from '../../../support/golden-table';

const frequency = fc.double({ min: 1e-6, max: 0.999, noNaN: true });
const inbreeding = fc.double({ min: 0, max: 1, noNaN: true });
const plants = fc.integer({ min: 1, max: 2000 });

describe('chance of keeping an allele', () => {
  it('equals R from one plant to a thousand and from one in a thousand million to nearly all', () => {
    type Row = { plants: number; frequency: number; inbreeding: number; chance: number };
    for (const row of goldenRows<Row>('diversity', 'keeping')) {
      expectClose(chanceOfKeepingAllele(row), row.chance, 1e-12, row);
    }
  });

  it('is certain to miss without plants', () => {
    expect(chanceOfKeepingAllele({ plants: 0, frequency: 0.5 })).toBe(0);
  });

  it('grows with every plant, and with crossing rather than selfing', () => {
    fc.assert(
      fc.property(plants, frequency, inbreeding, (n, p, f) => {
        const here = chanceOfKeepingAllele({ plants: n, frequency: p, inbreeding: f });
        expect(chanceOfKeepingAllele({ plants: n + 1, frequency: p, inbreeding: f })).toBeGreaterThanOrEqual(here);
        expect(chanceOfKeepingAllele({ plants: n, frequency: p, inbreeding: 0 })).toBeGreaterThanOrEqual(here - 1e-15);
        expect(chanceOfKeepingAllele({ plants: n, frequency: p, inbreeding: 1 })).toBeLessThanOrEqual(here + 1e-15);
      }),
      { seed: 311 },
    );
  });

  it('of a crosser with n plants is that of a selfer with 2n', () => {
    fc.assert(
      fc.property(plants, frequency, (n, p) => {
        const crosser = chanceOfKeepingAllele({ plants: n, frequency: p, inbreeding: 0 });
        expectClose(chanceOfKeepingAllele({ plants: 2 * n, frequency: p, inbreeding: 1 }), crosser, 1e-11, [n, p]);
      }),
      { seed: 312 },
    );
  });

  it.each([
    { plants: -1, frequency: 0.1 },
    { plants: 1.5, frequency: 0.1 },
    { plants: 5, frequency: 0 },
    { plants: 5, frequency: 1 },
    { plants: 5, frequency: 0.1, inbreeding: 1.1 },
  ])('refuses %o', (input) => {
    expect(() => chanceOfKeepingAllele(input)).toThrow(RangeError);
  });
});

describe('plants to keep an allele', () => {
  it('are the fewest by R, for one gene and for many', () => {
    type Row = { frequency: number; assurance: number; inbreeding: number; genes: number; plants: number };
    for (const row of goldenRows<Row>('diversity', 'needed')) {
      expect(plantsToKeepAllele(row), JSON.stringify(row)).toBe(row.plants);
    }
  });

  // Crossa et al. 1993, Theor. Appl. Genet. 86:673-678 (abstract): 89-110 plants for 10 loci and 134-155 for 100 loci, alleles
  // at 0.05, with 90-95 %. Read as one gamete a plant, the lower ends come out to the plant; the upper ends (110, 155) lie 7
  // above what 95 % gives (103, 148) and are not reproduced.
  it.each([
    { genes: 10, published: 89 },
    { genes: 100, published: 134 },
  ])('agree with the published $published plants for $genes genes at 90 %', ({ genes, published }) => {
    expect(plantsToKeepAllele({ frequency: 0.05, assurance: 0.9, inbreeding: 1, genes })).toBe(published);
  });

  // Crossa 1989, Theor. Appl. Genet. 77:153-161: above 10 % kept with 40 plants, 5 % with 100.
  it('agree with a published rule of thumb: 40 plants keep what is above 10 %, 100 what is at 5 %', () => {
    expect(chanceOfKeepingAllele({ plants: 40, frequency: 0.1, inbreeding: 1 })).toBeGreaterThan(0.98);
    expect(chanceOfKeepingAllele({ plants: 100, frequency: 0.05, inbreeding: 1 })).toBeGreaterThan(0.99);
    expect(chanceOfKeepingAllele({ plants: 100, frequency: 0.01, inbreeding: 1 })).toBeLessThan(0.7);
  });

  it('say Infinity where no bank could grow so many', () => {
    expect(plantsToKeepAllele({ frequency: 1e-9, assurance: 0.95 })).toBe(Number.POSITIVE_INFINITY);
  });

  it.each([
    { frequency: 0.1, assurance: 1 },
    { frequency: 0.1, assurance: 0 },
    { frequency: 0.1, assurance: 0.9, genes: 0 },
    { frequency: 0.1, assurance: 0.9, genes: 1.5 },
  ])('refuse %o', (input) => {
    expect(() => plantsToKeepAllele(input)).toThrow(RangeError);
  });
});
