/** How a threshold is reckoned: as a fraction of the lot's own initial viability, or as one viability for all. */
export const THRESHOLD_KINDS = ['fraction-of-initial', 'absolute'] as const;

export type ThresholdKind = (typeof THRESHOLD_KINDS)[number];
