/** How well one model carries all counts of a storage experiment. */
import { chiSquareUpperTail } from '../../statistics/chi-square';
import { normalLogCdf } from '../../statistics/normal-distribution';
import type { GoodnessOfFit } from './experiment-fit';

/** A count and the probit that the fit gives it. */
export interface FittedCount {
  days: number;
  sown: number;
  germinated: number;
  probit: number;
}

/** Below this chance, scatter is no longer put down to chance (common practice). */
const LEAST_CHANCE = 0.05;

/**
 * Deviance, Pearson's chi-square, the heterogeneity factor, and whether standard errors are to be widened.
 *
 * @param counts            every count with seed, with its fitted probit
 * @param degreesOfFreedom  counts less unknowns, >= 0
 * @see Finney (1971), Probit Analysis, 3rd ed.: the heterogeneity factor (from memory)
 * Checked against R: tests/domain/longevity/storage-experiment/fit-storage-experiment.test.ts
 */
export function goodnessOfFit(counts: readonly FittedCount[], degreesOfFreedom: number): GoodnessOfFit {
  let deviance = 0;
  let pearsonChiSquare = 0;
  let beforeStorage = 0;
  for (const { days, sown, germinated, probit } of counts) {
    const dead = sown - germinated;
    const logP = normalLogCdf(probit);
    const logQ = normalLogCdf(-probit);
    if (germinated > 0) deviance += 2 * germinated * (Math.log(germinated / sown) - logP);
    if (dead > 0) deviance += 2 * dead * (Math.log(dead / sown) - logQ);
    // (s - nP)^2 / (nPQ), with s - nP = sQ - fP: each term keeps its own digits.
    const residual = germinated * Math.exp(logQ) - dead * Math.exp(logP);
    const part = residual === 0 ? 0 : (residual * residual) / (sown * Math.exp(logP + logQ));
    pearsonChiSquare += part;
    if (days === 0) beforeStorage += part;
  }
  const hasFreedom = degreesOfFreedom > 0;
  const chance = hasFreedom ? chiSquareUpperTail(pearsonChiSquare, degreesOfFreedom) : null;
  const heterogeneity = hasFreedom ? pearsonChiSquare / degreesOfFreedom : null;
  const lacksFit = chance !== null && chance < LEAST_CHANCE;
  return {
    deviance: Math.max(0, deviance),
    pearsonChiSquare,
    degreesOfFreedom,
    chance,
    heterogeneity,
    lacksFit,
    standardErrorFactor: lacksFit ? Math.sqrt(heterogeneity as number) : 1,
    shareBeforeStorage: lacksFit ? beforeStorage / pearsonChiSquare : null,
  };
}
