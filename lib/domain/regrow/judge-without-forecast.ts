/**
 * A lot for which no forecast holds (recalcitrant seed, seed too moist, no constants): only its tests tell anything, so
 * the judgement is when to test it next, and no figure is made up.
 */
import { nextSeason } from '../calendar/season';
import type { LotJudgement, LotToJudge } from './lot-judgement';
import { testDue } from './test-due';
import { type Action, urgencyOf } from './urgency';

/** Nothing is known of such a lot's risk: when its test is due it stands in the middle of the lots to be tested. */
const UNKNOWN_RISK = 0.5;

/**
 * Judges a lot without forecast.
 *
 * @param lot     see LotToJudge; its posterior and ageing are not read
 * @param reason  why no forecast holds, in plain words
 * @returns its judgement, with null for every forecast figure
 * @throws RangeError when a date does not exist or the sowing month is outside 1 to 12
 * Checked in tests/domain/regrow/judge-lot.test.ts
 */
export function judgeWithoutForecast(lot: LotToJudge, reason: string): LotJudgement {
  const due = testDue({
    receivedOn: lot.receivedOn,
    lastTestedOn: lot.lastTestedOn,
    daysFromTestToThreshold: null,
    chancePassesOn: null,
    life: lot.life ?? 'short-lived',
  });
  const isDue = due.dueOn <= lot.today;
  const isEmpty = lot.seedsLeft === 0;
  const action: Action = isDue && !isEmpty ? 'test-first' : 'leave';
  const sentence = isEmpty
    ? 'No seed left.'
    : `No forecast: ${reason}; ${isDue ? `a test has been due since ${due.dueOn}` : `next test due ${due.dueOn}`}.`;
  const reasons = [sentence];
  if (!isEmpty && lot.isOnlyLot) reasons.push('Only lot of its accession.');
  if (!isEmpty && !lot.hasSafetyDuplicate) reasons.push('No safety duplicate.');
  return {
    viabilityNow: null,
    threshold: null,
    chanceBelowNow: null,
    chanceBelowBySeason: [],
    nextSeason: nextSeason(lot.today, lot.sowingMonth),
    seedsNeeded: null,
    chanceOfRaisingNextSeason: null,
    testDue: due,
    lastSafeSeason: null,
    rescue: false,
    action,
    urgency: isEmpty
      ? 0
      : urgencyOf({
          action,
          rescue: false,
          chanceBelow: isDue ? UNKNOWN_RISK : 0,
          chanceWaitingFails: 0,
          isOnlyLot: lot.isOnlyLot,
          hasSafetyDuplicate: lot.hasSafetyDuplicate,
        }),
    reasons,
    sentence,
    forecastRefusal: reason,
  };
}
