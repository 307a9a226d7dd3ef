/*
 * Whether the replicates of a test differ by more than chance, and by how much.
 *
 * The range says it with a table; this says it with all replicates: a chi-square test that they share one germination,
 * and the intra-replicate correlation (how alike seeds of one dish are beyond chance), which the lot model can use.
 */
import { chiSquareUpperTail } from '../statistics/chi-square';
import type { NormalCount } from './normal-count';

export interface Heterogeneity {
  /** sum of (normal - expected)^2 / (seeds p (1 - p)) over replicates */
  chiSquare: number;
  /** replicates less one */
  degreesOfFreedom: number;
  /** chance of a chi-square this large from alike replicates; approximate where fewer than about 5 are expected */
  pValue: number;
  /** moment estimate, 0-1; 0 when the replicates differ no more than by chance */
  intraReplicateCorrelation: number;
}

/**
 * Chi-square test of homogeneity of replicates, and the moment estimate of the intra-replicate correlation.
 *
 * The expected chi-square of beta-binomial replicates is (k - 1) + rho (N - (k - 1) - sum(n^2) / N), from which rho. It
 * is cut at 0 and 1. From four dishes it is a rough figure: pool many tests before using it as a fact.
 *
 * @param replicates  seeds (integer, >= 1) and normal (integer, 0 to seeds)
 * @returns the test, or null for fewer than two replicates. When all seeds germinated, or none, nothing differs:
 *          chi-square 0, p-value 1, correlation 0
 * @see Kleinman (1973), J. Am. Stat. Assoc. 68:46-54 (from memory), for estimates by moments
 * Checked against R `prop.test`: tests/golden/heterogeneity.json
 */
export function replicateHeterogeneity(replicates: readonly NormalCount[]): Heterogeneity | null {
  if (replicates.length < 2) return null;
  const seeds = replicates.reduce((sum, replicate) => sum + replicate.seeds, 0);
  const normal = replicates.reduce((sum, replicate) => sum + replicate.normal, 0);
  const degreesOfFreedom = replicates.length - 1;
  if (normal === 0 || normal === seeds) {
    return { chiSquare: 0, degreesOfFreedom, pValue: 1, intraReplicateCorrelation: 0 };
  }
  const proportion = normal / seeds;
  const variancePerSeed = proportion * ((seeds - normal) / seeds);
  const chiSquare = replicates.reduce(
    (sum, replicate) =>
      sum + (replicate.normal - replicate.seeds * proportion) ** 2 / (replicate.seeds * variancePerSeed),
    0,
  );
  const squares = replicates.reduce((sum, replicate) => sum + replicate.seeds * replicate.seeds, 0);
  const growthPerCorrelation = seeds - degreesOfFreedom - squares / seeds;
  // One seed a dish: then there is nobody to resemble, and the figure stays 0.
  const estimate = growthPerCorrelation > 0 ? (chiSquare - degreesOfFreedom) / growthPerCorrelation : 0;
  return {
    chiSquare,
    degreesOfFreedom,
    pValue: chiSquareUpperTail(chiSquare, degreesOfFreedom),
    intraReplicateCorrelation: Math.min(1, Math.max(0, estimate)),
  };
}
