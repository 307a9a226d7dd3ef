/*
 * The viability tests that are written down beside germination tests, the classes that each counts, and how they are read.
 */
import { type CutTestResult, cutResult, tetrazoliumResult, type ViabilityTestResult } from './viability-test';

export const VIABILITY_KINDS = ['tetrazolium', 'cut'] as const;
export type ViabilityKind = (typeof VIABILITY_KINDS)[number];

export const VIABILITY_KIND_LABELS: Record<ViabilityKind, string> = {
  tetrazolium: 'tetrazolium test',
  cut: 'cut test',
};

/** Classes of each test, the one that counts as alive first. */
export const VIABILITY_CLASSES = {
  tetrazolium: ['stainedNormally', 'stainedAbnormally', 'unstained'],
  cut: ['firm', 'empty', 'insectDamaged', 'dead'],
} as const satisfies Record<ViabilityKind, readonly string[]>;

export type ViabilityClass = (typeof VIABILITY_CLASSES)[ViabilityKind][number];

/** Every class of every kind, each once. */
export const ALL_VIABILITY_CLASSES: readonly ViabilityClass[] = VIABILITY_KINDS.flatMap(
  (kind) => VIABILITY_CLASSES[kind],
);

export const VIABILITY_CLASS_LABELS: Record<ViabilityClass, string> = {
  stainedNormally: 'stained as it should be',
  stainedAbnormally: 'stained in part, or wrongly',
  unstained: 'unstained',
  firm: 'full and firm',
  empty: 'empty',
  insectDamaged: 'eaten by insects',
  dead: 'soft, discoloured or rotten',
};

/** Counts as they are stored: those of the other kind are null. */
export type StoredViabilityCounts = Record<ViabilityClass, number | null>;

/**
 * What a recorded test says.
 *
 * @param kind    which test it was
 * @param counts  integers >= 0; classes of the other kind are passed over, null counts as 0
 * @param level   probability in (0, 1), default 0.95
 * @returns the share alive (tetrazolium), or at most alive (cut), of all seeds, with its interval
 * @throws RangeError as `tetrazoliumResult` and `cutResult`
 * Checked in tests/domain/germination/dormancy/viability-kinds.test.ts
 */
export function recordedResult(
  kind: ViabilityKind,
  counts: StoredViabilityCounts,
  level = 0.95,
): ViabilityTestResult | CutTestResult {
  const of = (name: ViabilityClass) => counts[name] ?? 0;
  if (kind === 'tetrazolium') {
    return tetrazoliumResult(
      {
        stainedNormally: of('stainedNormally'),
        stainedAbnormally: of('stainedAbnormally'),
        unstained: of('unstained'),
      },
      level,
    );
  }
  return cutResult(
    { firm: of('firm'), empty: of('empty'), insectDamaged: of('insectDamaged'), dead: of('dead') },
    level,
  );
}
