/** What the judging of a lot takes in, and what it says: shared by the lots with a forecast and those without. */
import type { CalendarDate } from '../calendar/calendar-date';
import type { LotPosterior } from '../longevity/lot-model';
import type { LastSafeSeason } from './last-safe-season';
import type { TestDue } from './test-due';
import type { ThresholdRule } from './threshold';
import type { Action } from './urgency';

export interface LotToJudge {
  today: CalendarDate;
  /** from fitLot; not read when a forecast is refused */
  posterior: LotPosterior;
  /** published ageing up to today, probits, >= 0 */
  probitsLostNow: number;
  /** published ageing per day in the present store, probits, >= 0 */
  probitsPerDay: number;
  /** why no forecast holds for this seed, in plain words, e.g. 'the seed is too moist for the equation' */
  forecastRefusal?: { reason: string };
  thresholdRule: ThresholdRule;
  /** whole seeds in all its packets, >= 0 */
  seedsLeft: number;
  plantsNeeded: number;
  /** chance that a living seed becomes a plant, in (0, 1] */
  emergence: number;
  /** wanted chance of raising the plants, in (0, 1); default 0.95 */
  assurance?: number;
  /** 1 to 12 */
  sowingMonth: number;
  /** harvest or receipt, whichever is later */
  receivedOn: CalendarDate;
  /** null: never tested */
  lastTestedOn: CalendarDate | null;
  /** published ageing up to the last test, probits; left out, the present rate is reckoned backwards */
  probitsLostAtLastTest?: number;
  /** viability in two tests that differ by more than chance allows, proportions */
  contradictoryTests?: readonly [number, number] | null;
  /** for the interval between tests without a forecast; default 'short-lived' */
  life?: 'long-lived' | 'short-lived';
  /** default 50 */
  seedsPerTest?: number;
  /** no other lot of its accession has seed */
  isOnlyLot: boolean;
  hasSafetyDuplicate: boolean;
}

/** What is known of a lot today. Proportions and chances are 0-1; null where no forecast holds. */
export interface LotJudgement {
  viabilityNow: { median: number; lower: number; upper: number; level: number } | null;
  threshold: number | null;
  chanceBelowNow: number | null;
  /** at each of the next five sowings */
  chanceBelowBySeason: { season: number; chance: number }[];
  nextSeason: number;
  /** for the next season; Infinity when no number reaches the assurance */
  seedsNeeded: number | null;
  /** of raising the plants by sowing all the seed left in the next season */
  chanceOfRaisingNextSeason: number | null;
  testDue: TestDue;
  lastSafeSeason: LastSafeSeason | null;
  rescue: boolean;
  action: Action;
  /** larger is more urgent; see urgency.ts */
  urgency: number;
  reasons: string[];
  sentence: string;
  forecastRefusal: string | null;
}
