import type { SeedKind } from '../../../lib/domain/longevity/seed-kind';
import type { LongevityConstants } from '../../../lib/domain/longevity/viability-equation';

/** Orthodox seed with these constants; oil and low-moisture limit as in a golden table, where null is "not known". */
export function seedOf(
  { KE, CW, CH, CQ }: LongevityConstants,
  { oil = 0, limit = null }: { oil?: number; limit?: number | null } = {},
): SeedKind {
  return {
    constants: { KE, CW, CH, CQ },
    constantsRange: { lowMoistureLimitPercent: limit ?? undefined },
    storageBehaviour: 'orthodox',
    oilFraction: oil,
  };
}
