import type { StorageBehaviour } from '../reference/crop-facts';
import type { ConstantsRange } from './equation-limits';
import type { LongevityConstants } from './viability-equation';

/** What the ageing of a crop's seed depends on. */
export interface SeedKind {
  constants: LongevityConstants;
  constantsRange: ConstantsRange;
  storageBehaviour: StorageBehaviour;
  /** oil as a fraction of dry weight, 0-0.8 */
  oilFraction: number;
}
