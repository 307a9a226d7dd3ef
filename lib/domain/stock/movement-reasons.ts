/**
 * Why seed goes into or out of a packet. The one list: input rules, the database and the screens all use it.
 */
export const MOVEMENT_REASONS = [
  'deposit',
  'test',
  'sowing',
  'sharing',
  'discard',
  'loss',
  'split',
  'merge',
  'count',
  'correction',
] as const;

export type MovementReason = (typeof MOVEMENT_REASONS)[number];

/** Which way seed goes for each reason. A correction names the entry it corrects and may go either way. */
export const MOVEMENT_DIRECTIONS: Record<MovementReason, 'in' | 'out' | 'either'> = {
  deposit: 'in',
  test: 'out',
  sowing: 'out',
  sharing: 'out',
  discard: 'out',
  loss: 'out',
  // Out of one packet and into a new one of the same lot.
  split: 'either',
  // All of one packet into another one of the same lot.
  merge: 'either',
  // What a stock-take found more or less than the ledger said; 0 when it found what was expected.
  count: 'either',
  correction: 'either',
};

/** What people read. */
export const MOVEMENT_REASON_LABELS: Record<MovementReason, string> = {
  deposit: 'deposit',
  test: 'test',
  sowing: 'sowing',
  sharing: 'sharing',
  discard: 'discarded',
  loss: 'loss',
  split: 'split',
  merge: 'merge',
  count: 'count correction',
  correction: 'taken back',
};

const isReason = (reason: string): reason is MovementReason => reason in MOVEMENT_REASON_LABELS;

/**
 * A line's reason for reading.
 *
 * @param reason  as stored
 * @param seeds   of the line, signed
 * @returns its label; a count that found what was expected says so
 * Checked in tests/domain/stock/movement-reasons.test.ts
 */
export function reasonInWords(reason: string, seeds: number): string {
  if (reason === 'count' && seeds === 0) return 'counted, as expected';
  return isReason(reason) ? MOVEMENT_REASON_LABELS[reason] : reason;
}

/** Reasons for which somebody takes seed out by hand. */
export const HAND_WITHDRAWAL_REASONS = [
  'sowing',
  'test',
  'sharing',
  'discard',
  'loss',
] as const satisfies MovementReason[];
