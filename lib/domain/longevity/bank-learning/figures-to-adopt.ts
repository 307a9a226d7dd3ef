/** The learnt belief as it is taken over: rounded to what a page shows, so that what is kept is what was seen. */
import type { CropLearning } from './learn-crop-prior';

export interface FiguresToAdopt {
  priorInitialMean: number;
  priorInitialSd: number;
  /** left out when too few lots tell of the rate */
  priorLogRateMean?: number;
  priorLogRateSd?: number;
}

/**
 * @param learning  of a crop, from which something was learnt
 * @returns probits and log rates, to two digits behind the point
 * Checked in tests/domain/longevity/bank-learning/figures-to-adopt.test.ts
 */
export function figuresToAdopt({ suggested, logRate }: Extract<CropLearning, { ok: true }>): FiguresToAdopt {
  const initial = { priorInitialMean: rounded(suggested.initial.mean), priorInitialSd: rounded(suggested.initial.sd) };
  if (!logRate) return initial;
  return {
    ...initial,
    priorLogRateMean: rounded(suggested.logRate.mean),
    priorLogRateSd: rounded(suggested.logRate.sd),
  };
}

/**
 * The same in one line of text, which a form can carry: '1.62 0.54 0.34 0.41'.
 *
 * @param figures  means and sd of probits, then of the log rate where it was learnt
 * @returns two figures or four, parted by blanks
 * Checked in tests/domain/longevity/bank-learning/figures-to-adopt.test.ts
 */
export function figuresInOneLine(figures: FiguresToAdopt): string {
  const { priorInitialMean, priorInitialSd, priorLogRateMean, priorLogRateSd } = figures;
  return [priorInitialMean, priorInitialSd, priorLogRateMean, priorLogRateSd]
    .filter((figure) => figure !== undefined)
    .join(' ');
}

const rounded = (value: number): number => Math.round(value * 100) / 100 || 0; // no minus zero
