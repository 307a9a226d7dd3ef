/**
 * What a stock-take found of a packet, held against the ledger; what may be decided about it, and what a decision
 * writes. The difference counts from the balance at the moment when the packet was looked at: what went out since, with
 * an entry of its own, is not missing.
 */
import { normalQuantile } from '../statistics/normal-distribution';
import { balanceUncertainty, type SpreadLine } from './balance-uncertainty';

export const STOCK_TAKE_DECISIONS = ['correct', 'loss', 'move-here', 'leave'] as const;
export type StockTakeDecision = (typeof STOCK_TAKE_DECISIONS)[number];

export const DECISION_LABELS: Record<StockTakeDecision, string> = {
  correct: 'correct the ledger to what was counted',
  loss: 'write it off as a loss',
  'move-here': 'it lies here from now on',
  leave: 'leave it as it is',
};

export type Finding = 'here' | 'not-here';

/** What was found of one packet. */
export interface LookedAt {
  finding: Finding;
  /** balance when it was looked at */
  expectedSeeds: number;
  /** counted or weighed; null when it was only ticked */
  seeds: number | null;
  /** by its placement it lies in this store, or in one inside it */
  belongsHere: boolean;
}

/**
 * Seeds more (positive) or fewer than the ledger said.
 *
 * @returns null when it was only ticked: nothing is known of its seeds
 * Checked in tests/domain/stock/stock-take-difference.test.ts
 */
export function differenceOf({ finding, expectedSeeds, seeds }: LookedAt): number | null {
  if (finding === 'not-here') return 0 - expectedSeeds;
  return seeds === null ? null : seeds - expectedSeeds;
}

/**
 * What may be decided about a packet.
 *
 * @returns the choices; none where everything is as the ledger says, or a packet that is not here should not be here
 * Checked in tests/domain/stock/stock-take-difference.test.ts
 */
export function choicesFor(line: LookedAt): StockTakeDecision[] {
  const difference = differenceOf(line);
  if (line.finding === 'not-here') return line.belongsHere && line.expectedSeeds > 0 ? ['loss', 'leave'] : [];
  if (!line.belongsHere) return difference ? ['move-here', 'correct', 'leave'] : ['move-here', 'leave'];
  if (!difference) return [];
  return difference < 0 ? ['correct', 'loss', 'leave'] : ['correct', 'leave'];
}

/** What closing a stock-take writes about one packet. */
export interface StockTakeEffect {
  movements: { reason: 'count' | 'loss'; seeds: number }[];
  /** the packet is placed in the store that was gone through */
  movesHere: boolean;
}

/**
 * What a decision writes. A packet that was counted gets a count line whatever the difference, 0 too: from then on only
 * what is counted or weighed after it is unsure.
 *
 * @param decision  one of choicesFor; null where there was nothing to decide
 * @returns movements in the order in which they are written, and whether the packet is moved
 * @throws RangeError when the decision is none of the choices
 * Checked in tests/domain/stock/stock-take-difference.test.ts
 */
export function effectOf(line: LookedAt, decision: StockTakeDecision | null): StockTakeEffect {
  const choices = choicesFor(line);
  if (decision === null ? choices.length > 0 : !choices.includes(decision)) {
    throw new RangeError(`effectOf: decision must be one of ${choices.join(', ') || 'none'}, got ${decision}`);
  }
  const difference = differenceOf(line);
  if (decision === 'leave' || difference === null || (line.finding === 'not-here' && decision === null)) {
    return { movements: [], movesHere: decision === 'move-here' };
  }
  if (decision !== 'loss')
    return { movements: [{ reason: 'count', seeds: difference }], movesHere: decision === 'move-here' };
  const loss = { reason: 'loss' as const, seeds: difference };
  // A packet that is gone holds nothing; one that was counted is known afresh.
  return { movements: line.finding === 'not-here' ? [loss] : [loss, { reason: 'count', seeds: 0 }], movesHere: false };
}

/**
 * Whether a difference is larger than what is unsure of the balance and of the count explains.
 *
 * @param ledger   the packet's lines as they were when it was looked at, in the order in which they were written
 * @param counted  what was found: seeds, grams when it was weighed, and how far the seeds may be off
 * @param options  as balanceUncertainty takes them; both weighed by the same seed weight are off the same way
 * @returns `sd` of the difference, seeds; `unexplained`: it lies outside the band, of the level of the balance's, that
 *   differences keep to when nothing but counting and weighing has made them
 * Checked in tests/domain/stock/stock-take-difference.test.ts
 */
export function weighDifference(
  ledger: readonly SpreadLine[],
  counted: { seeds: number; grams: number | null; seedsSd: number | null },
  options: { lotHasSeedWeight: boolean; level?: number },
): { sd: number; unexplained: boolean } {
  const takenAway: SpreadLine = {
    id: 'counted',
    reason: 'sowing',
    seeds: 0 - counted.seeds,
    grams: counted.grams === null ? null : 0 - counted.grams,
    seedsSd: counted.seedsSd ?? 0,
    correctsId: null,
  };
  // What the ledger says less what was found: its spread is that of the difference.
  const { seeds, sd, level } = balanceUncertainty([...ledger, takenAway], options);
  return { sd, unexplained: Math.abs(seeds) > sd * normalQuantile((1 + level) / 2) };
}
