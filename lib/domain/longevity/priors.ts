/**
 * What is believed of a lot before any test: most fresh, well-grown lots start at about 96 %, and age at about the
 * published rate, give or take. Where the constants are borrowed from another crop, or conditions lie outside those in
 * which they were fitted, the rate is believed less, and faster: a published meta-analysis finds that the
 * equations are optimistic for long cold storage (Solberg et al. 2020, Front. Plant Sci. 11:1007).
 * The figures themselves are our own choice, stated so that they can be changed per crop.
 */
import type { LotPrior } from './lot-model';

/** 96 % (1.75 probits); two lots in three between 84 % and 99.4 %. */
export const INITIAL_PRIOR = { mean: 1.75, sd: 0.75 } as const;
/** Own constants inside their range: two lots in three age at 0.6 to 1.65 times the published rate. */
export const OWN_RATE_PRIOR = { mean: 0, sd: 0.5 } as const;
/** Borrowed constants or outside the range: about 1.35 times as fast, two lots in three between 0.55 and 3.3 times. */
export const DOUBTFUL_RATE_PRIOR = { mean: 0.3, sd: 0.9 } as const;

export type ChosenPrior = LotPrior & {
  /** one plain sentence: why this prior */
  reason: string;
};

/**
 * The prior for a lot.
 *
 * @param borrowed            the constants were fitted to another crop
 * @param outsideFittedRange  moisture or temperature lies outside the fitted range, or the range is not known
 * @param moistureAssumed     the seed's moisture was not measured but assumed (default false)
 * @param cropOverride        the bank's own prior for the crop: either part replaces the default
 * @returns both normal priors and the reason in a sentence
 * @throws RangeError when an override's mean is not within +-50 or its sd not in (0, 10]
 * Checked in tests/domain/longevity/priors.test.ts
 */
export function chooseLotPrior({
  borrowed,
  outsideFittedRange,
  moistureAssumed = false,
  cropOverride = {},
}: {
  borrowed: boolean;
  outsideFittedRange: boolean;
  moistureAssumed?: boolean;
  cropOverride?: Partial<LotPrior>;
}): ChosenPrior {
  requireOverride('initial', cropOverride.initial);
  requireOverride('logRate', cropOverride.logRate);
  const doubts: string[] = [];
  if (borrowed) doubts.push('the ageing constants are borrowed from another crop');
  if (outsideFittedRange) doubts.push('the store lies outside the conditions in which the constants were fitted');
  if (moistureAssumed) doubts.push("the seed's moisture is assumed, not measured");
  const logRate = cropOverride.logRate ?? (doubts.length > 0 ? DOUBTFUL_RATE_PRIOR : OWN_RATE_PRIOR);
  return { initial: { ...(cropOverride.initial ?? INITIAL_PRIOR) }, logRate: { ...logRate }, reason: reasonOf() };

  function reasonOf(): string {
    if (cropOverride.logRate) return "The rate of ageing starts from the bank's own belief for this crop.";
    if (doubts.length === 0) return "The ageing constants were fitted to this crop in conditions like this store's.";
    return `The rate of ageing is held to be faster and less certain, because ${joined(doubts)}.`;
  }
}

function joined(parts: string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

function requireOverride(name: string, part: { mean: number; sd: number } | undefined): void {
  if (!part) return;
  if (!(Math.abs(part.mean) <= 50)) {
    throw new RangeError(`chooseLotPrior: cropOverride.${name}.mean must be within +-50, got ${part.mean}`);
  }
  if (!(part.sd > 0 && part.sd <= 10)) {
    throw new RangeError(`chooseLotPrior: cropOverride.${name}.sd must be above 0 and at most 10, got ${part.sd}`);
  }
}
