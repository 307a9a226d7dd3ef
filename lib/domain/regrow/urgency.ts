/**
 * One number by which lots are put in order: larger is more urgent. Its hundreds say what kind of need it is, so that no
 * worry about a healthy lot ever comes before a rescue; within a hundred it grows with the risk and with what is at stake.
 */
export const ACTIONS = ['regrow', 'test-first', 'leave'] as const;
export type Action = (typeof ACTIONS)[number];

const HUNDREDS = { leave: 0, 'test-first': 100, regrow: 200, rescue: 300 } as const;

/** What a lot stands for: a lone lot without a duplicate elsewhere weighs 2.5 times one of many. The bank's own choice. */
const STAKE = { any: 1, onlyLot: 1, noSafetyDuplicate: 0.5 } as const;
const MOST_STAKE = STAKE.any + STAKE.onlyLot + STAKE.noSafetyDuplicate;

/** Keeps the risk's share below a full hundred. */
const WITHIN_A_HUNDRED = 99;

/**
 * How urgent a lot is: 0-99 leave, 100-199 test first, 200-299 regrow, 300-399 rescue; 0 for an empty lot.
 *
 * @param action              what is to be done
 * @param rescue              past its last safe season
 * @param chanceBelow         of being below the threshold at the next sowing, 0-1
 * @param chanceWaitingFails  that the seed left cannot raise the plants needed if the next season is let pass, 0-1
 * @param isOnlyLot           of its accession
 * @param hasSafetyDuplicate  at another place
 * @returns number from 0 to 399
 * Checked in tests/domain/regrow/urgency.test.ts
 */
export function urgencyOf({
  action,
  rescue,
  chanceBelow,
  chanceWaitingFails,
  isOnlyLot,
  hasSafetyDuplicate,
}: {
  action: Action;
  rescue: boolean;
  chanceBelow: number;
  chanceWaitingFails: number;
  isOnlyLot: boolean;
  hasSafetyDuplicate: boolean;
}): number {
  const risk = 1 - (1 - chanceBelow) * (1 - chanceWaitingFails);
  const stake = STAKE.any + (isOnlyLot ? STAKE.onlyLot : 0) + (hasSafetyDuplicate ? 0 : STAKE.noSafetyDuplicate);
  return HUNDREDS[rescue ? 'rescue' : action] + (WITHIN_A_HUNDRED * risk * stake) / MOST_STAKE;
}
