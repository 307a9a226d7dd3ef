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
  correction: 'either',
};

/** Reasons for which somebody takes seed out by hand. Seed for a test goes out with the record of the test. */
export const HAND_WITHDRAWAL_REASONS = ['sowing', 'sharing', 'discard', 'loss'] as const satisfies MovementReason[];
