/**
 * How many plants keep what is rare. A landrace is a mixture, and each regrowing from few plants loses some of it: what is
 * asked is the chance that a form of a gene (an allele) carried by few plants is still there afterwards.
 */

/** A chance this close to the assurance is a tie, which rounding must not decide: it is enough. */
const TIE = 1e-12;
const MOST_PLANTS = 10_000_000;

export interface RareAllele {
  /** share of all copies of the gene that are this allele; (0, 1) */
  frequency: number;
  /**
   * F, 0-1: chance that both copies in a plant are one and the same by descent. 0 for free crossing, 1 for lines that have
   * long selfed. A plant then carries 2 - F independent copies, roughly; the sum here is exact.
   */
  inbreeding?: number;
}

/**
 * Chance that an allele is among the plants at least once: 1 - (q (q + F p))^n, with q = 1 - p.
 *
 * @param plants      plants that give seed, integer >= 0
 * @param frequency   p, in (0, 1)
 * @param inbreeding  F, in [0, 1]; default 0: 1 - q^(2n); with F = 1: 1 - q^n
 * @returns chance in [0, 1]; relative error below 1e-12, for rare alleles and few plants too
 * @throws RangeError when an argument is outside its range
 * @see Crossa 1989, Theor. Appl. Genet. 77:153-161, for the question (published); genotype frequencies under inbreeding
 *      are standard population genetics (from memory)
 * Checked against R and published plant numbers: tests/domain/regrow/diversity/keeping-alleles.test.ts
 */
export function chanceOfKeepingAllele({ plants, frequency, inbreeding = 0 }: RareAllele & { plants: number }): number {
  if (!(Number.isInteger(plants) && plants >= 0)) {
    throw new RangeError(`chanceOfKeepingAllele: plants must be an integer >= 0, got ${plants}`);
  }
  if (plants === 0) return 0;
  return -Math.expm1(plants * logChanceOfLacking('chanceOfKeepingAllele', frequency, inbreeding));
}

/**
 * Fewest plants that keep an allele with the assurance wanted; or one such allele at each of many genes, all of them.
 *
 * @param frequency   p, in (0, 1)
 * @param assurance   chance of keeping them, in (0, 1)
 * @param inbreeding  F, in [0, 1]; default 0
 * @param genes       how many independent genes have such an allele, integer >= 1; default 1
 * @returns integer >= 1; Infinity beyond ten million
 * @throws RangeError when an argument is outside its range
 * @see Crossa et al. 1993, Theor. Appl. Genet. 86:673-678, for many genes (published)
 * Checked against R and published plant numbers: tests/domain/regrow/diversity/keeping-alleles.test.ts
 */
export function plantsToKeepAllele({
  frequency,
  assurance,
  inbreeding = 0,
  genes = 1,
}: RareAllele & { assurance: number; genes?: number }): number {
  if (!(assurance > 0 && assurance < 1)) {
    throw new RangeError(`plantsToKeepAllele: assurance must be in (0, 1), got ${assurance}`);
  }
  if (!(Number.isInteger(genes) && genes >= 1)) {
    throw new RangeError(`plantsToKeepAllele: genes must be an integer >= 1, got ${genes}`);
  }
  const logLacking = logChanceOfLacking('plantsToKeepAllele', frequency, inbreeding);
  // 1 - assurance^(1/genes), without the loss of digits that many genes bring.
  const mayBeLost = -Math.expm1(Math.log(assurance) / genes);
  const plants = Math.log(mayBeLost) / logLacking;
  const needed = Math.max(1, Math.ceil(plants - TIE * plants));
  return needed > MOST_PLANTS ? Number.POSITIVE_INFINITY : needed;
}

/** log of the chance that one plant has no copy of the allele: log(q (q + F p)). */
function logChanceOfLacking(caller: string, frequency: number, inbreeding: number): number {
  if (!(frequency > 0 && frequency < 1)) {
    throw new RangeError(`${caller}: frequency must be in (0, 1), got ${frequency}`);
  }
  if (!(inbreeding >= 0 && inbreeding <= 1)) {
    throw new RangeError(`${caller}: inbreeding must be in [0, 1], got ${inbreeding}`);
  }
  return Math.log1p(-frequency) + Math.log1p(-frequency * (1 - inbreeding));
}
