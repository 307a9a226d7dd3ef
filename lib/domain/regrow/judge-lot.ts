/**
 * Judges one lot: from its posterior, its stock and its store to what the steward should do, how urgent it is and why.
 * It only combines: each figure has a module of its own, and decide-action.ts holds the rules.
 */
import { type CalendarDate, daysBetween } from '../calendar/calendar-date';
import { nextSowingDates } from '../calendar/season';
import { medianViability, probabilityBelow, viabilityAt } from '../longevity/lot-model';
import { probitsUntilBelow } from '../longevity/probits-until-below';
import { CHANCE_THAT_CALLS_FOR_A_TEST } from '../longevity/time-to-threshold';
import { decideAction } from './decide-action';
import { type Decline, dateWhenLost, daysUntilLost, probitsLostBy } from './decline-dates';
import { judgeWithoutForecast } from './judge-without-forecast';
import { chanceOfRaisingOn, lastSafeSeason, type SowingOutlook } from './last-safe-season';
import type { LotJudgement, LotToJudge } from './lot-judgement';
import { STANDARD_ASSURANCE, seedsToSow, seedsToSowUncertain } from './seeds-to-sow';
import { type TestDue, testDue } from './test-due';
import { lotThreshold } from './threshold';
import { urgencyOf } from './urgency';

/** Seasons for which the chance of being below the threshold is told. */
export const SEASONS_SHOWN = 5;
/** The band shown around the viability. */
export const BAND_LEVEL = 0.9;
/** Seeds that a small test of an old lot takes: 2 x 25. Common practice; the bank may set its own. */
export const SEEDS_PER_TEST = 50;

/**
 * Judges one lot.
 *
 * @param lot  see LotToJudge
 * @returns its judgement
 * @throws RangeError when a figure is outside its range
 * @see docs/methods/regrow-decision.md
 * Checked in tests/domain/regrow/judge-lot.test.ts; every rule in tests/domain/regrow/decide-action.test.ts
 */
export function judgeLot(lot: LotToJudge): LotJudgement {
  if (lot.forecastRefusal !== undefined) return judgeWithoutForecast(lot, lot.forecastRefusal.reason);
  const { today, posterior, probitsLostNow, plantsNeeded, emergence, seedsLeft, sowingMonth } = lot;
  const assurance = lot.assurance ?? STANDARD_ASSURANCE;
  const initialViability = medianViability(posterior, { probitsLost: 0 });
  const threshold = lotThreshold({ rule: lot.thresholdRule, initialViability });
  const viabilityNow = viabilityAt(posterior, { probitsLost: probitsLostNow, level: BAND_LEVEL });
  const chanceBelowNow = probabilityBelow(posterior, { probitsLost: probitsLostNow, threshold });

  const sowings = nextSowingDates(today, sowingMonth, SEASONS_SHOWN);
  const chanceBelowBySeason = sowings.map(({ season, sowOn }) => {
    const probitsLost = probitsLostBy(lot, sowOn);
    return { season, chance: probabilityBelow(posterior, { probitsLost, threshold }) };
  });
  const [next, afterNext] = sowings as [(typeof sowings)[0], (typeof sowings)[0]];
  const atNextSowing = { probitsLost: probitsLostBy(lot, next.sowOn) };
  const seedsNeeded = seedsToSowUncertain({ plants: plantsNeeded, posterior, ...atNextSowing, emergence, assurance });
  const chancePerSeedAtMedian = Math.max(viabilityNow.median * emergence, Number.MIN_VALUE);

  const outlook: SowingOutlook = lot;
  const safeUntil = lastSafeSeason(outlook, sowingMonth, assurance);
  const chanceBelowNextSeason = (chanceBelowBySeason[0] as { chance: number }).chance;
  const due = dueTest(lot, threshold);
  const stakes = { isOnlyLot: lot.isOnlyLot, hasSafetyDuplicate: lot.hasSafetyDuplicate };
  const decision = decideAction({
    today,
    nextSeason: next.season,
    seedsLeft,
    plantsNeeded,
    seedsNeeded,
    seedsNeededAtMedian: seedsToSow({ plants: plantsNeeded, chancePerSeed: chancePerSeedAtMedian, assurance }),
    seedsPerTest: lot.seedsPerTest ?? SEEDS_PER_TEST,
    viabilityNow,
    threshold,
    chanceBelowNow,
    chanceBelowNextSeason,
    everTested: lot.lastTestedOn !== null,
    testDue: due,
    contradictoryTests: lot.contradictoryTests ?? null,
    lastSafeSeason: safeUntil,
    ...stakes,
  });
  const chanceWaitingFails = 1 - chanceOfRaisingOn(outlook, afterNext.sowOn);
  const risks = { chanceBelow: chanceBelowNextSeason, chanceWaitingFails, ...stakes };
  return {
    viabilityNow: { ...viabilityNow, level: BAND_LEVEL },
    threshold,
    chanceBelowNow,
    chanceBelowBySeason,
    nextSeason: next.season,
    seedsNeeded,
    chanceOfRaisingNextSeason: chanceOfRaisingOn(outlook, next.sowOn),
    testDue: due,
    lastSafeSeason: safeUntil,
    ...decision,
    urgency: seedsLeft === 0 ? 0 : urgencyOf({ action: decision.action, rescue: decision.rescue, ...risks }),
    forecastRefusal: null,
  };
}

/** When the next test is due, from the ageing at which the chance of being below passes one half and one tenth. */
function dueTest(lot: LotToJudge, threshold: number): TestDue {
  const { posterior, today, probitsLostNow, probitsPerDay, receivedOn, lastTestedOn } = lot;
  const since =
    lastTestedOn === null
      ? { on: receivedOn, probitsLost: 0 }
      : { on: lastTestedOn, probitsLost: lot.probitsLostAtLastTest ?? lostBefore(lot, lastTestedOn) };
  const decline: Decline = { today, probitsLostNow, probitsPerDay, since };
  const untilBelow = probitsUntilBelow(posterior, { threshold, chance: 0.5 }) ?? Number.POSITIVE_INFINITY;
  const untilRisk =
    probitsUntilBelow(posterior, { threshold, chance: CHANCE_THAT_CALLS_FOR_A_TEST, start: 0.6 * untilBelow }) ??
    Number.POSITIVE_INFINITY;
  return testDue({
    receivedOn,
    lastTestedOn,
    daysFromTestToThreshold: Math.max(
      0,
      daysUntilLost(decline, untilBelow) - daysUntilLost(decline, since.probitsLost),
    ),
    chancePassesOn: dateWhenLost(decline, untilRisk),
    life: lot.life ?? 'short-lived',
  });
}

/** Ageing up to an earlier day, at the present rate. */
function lostBefore({ today, probitsLostNow, probitsPerDay }: LotToJudge, on: CalendarDate): number {
  return Math.max(0, probitsLostNow - probitsPerDay * Math.max(0, daysBetween(on, today)));
}
