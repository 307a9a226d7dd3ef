/** Where a moisture that is shown or reckoned with comes from. */
import type { CalendarDate } from '../calendar/calendar-date';

/** What tests of a packet say of its sealed stay. */
export interface MeasuredMoisture {
  /** percent of fresh weight */
  moisturePercent: number;
  /** in order of date */
  tests: readonly { number: string; testedOn: CalendarDate }[];
}

export type MoistureSource =
  /** tests of the packet during its sealed stay */
  | { kind: 'measured'; tests: MeasuredMoisture['tests'] }
  /** written down when it was packed or moved */
  | { kind: 'written' }
  /** an open container: from the air of the store, by the equilibrium equation */
  | { kind: 'air' }
  /** nobody wrote or measured it: that of seed from an ordinary room */
  | { kind: 'assumed' };
