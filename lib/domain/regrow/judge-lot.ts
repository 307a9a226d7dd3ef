/**
 * Judges one lot: from its posterior, its stock and its store to what the steward should do, how urgent it is and why.
 * It only combines: each figure has a module of its own, and decide-action.ts holds the rules.
 */
import { type CalendarDate, daysBetween } from '../calendar/calendar-date';
import { fastProbit } from '../longevity/fast-probit';
import { medianViability, probabilityBelow, viabilityAt } from '../longevity/lot-model';
import { probitsUntilBelow } from '../longevity/probits-until-below';
import { CHANCE_THAT_CALLS_FOR_A_TEST } from '../longevity/time-to-threshold';
import { comingSowings } from './coming-sowings';
import { decideAction } from './decide-action';
import { type Decline, dateWhenLost, daysUntilLost } from './decline-dates';
import { judgeWithoutForecast } from './judge-without-forecast';
import { chanceAfterDays, lastSafeSeason, type SowingOutlook } from './last-safe-season';
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

/** Probits of ageing that tell something of the rate. */
const LEAST_TELLING_AGEING = 0.02;
const MOST_ALIVE = 1 - 1e-9;

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

  const sowings = comingSowings(today, sowingMonth);
  const nextSeason = sowings.first;
  const chanceBelowBySeason: LotJudgement['chanceBelowBySeason'] = [];
  for (let season = nextSeason; season < nextSeason + SEASONS_SHOWN; season += 1) {
    const probitsLost = probitsLostNow + lot.probitsPerDay * sowings.daysAhead(season);
    chanceBelowBySeason.push({ season, chance: probabilityBelow(posterior, { probitsLost, threshold }) });
  }
  const probitsLost = probitsLostNow + lot.probitsPerDay * sowings.daysAhead(nextSeason);
  const seedsNeeded = seedsToSowUncertain({ plants: plantsNeeded, posterior, probitsLost, emergence, assurance });
  const chancePerSeedAtMedian = Math.max(viabilityNow.median * emergence, Number.MIN_VALUE);

  const outlook: SowingOutlook = lot;
  const chanceOfRaisingNextSeason = chanceAfterDays(outlook, sowings.daysAhead(nextSeason));
  const safeUntil = lastSafeSeason(outlook, sowingMonth, assurance, chanceOfRaisingNextSeason);
  const chanceBelowNextSeason = (chanceBelowBySeason[0] as { chance: number }).chance;
  const due = dueTest(lot, threshold, initialViability, viabilityNow.median);
  const stakes = { isOnlyLot: lot.isOnlyLot, hasSafetyDuplicate: lot.hasSafetyDuplicate };
  const decision = decideAction({
    today,
    nextSeason,
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
  const chanceWaitingFails = 1 - chanceAfterDays(outlook, sowings.daysAhead(nextSeason + 1));
  const risks = { chanceBelow: chanceBelowNextSeason, chanceWaitingFails, ...stakes };
  return {
    viabilityNow: { ...viabilityNow, level: BAND_LEVEL },
    threshold,
    chanceBelowNow,
    chanceBelowBySeason,
    nextSeason,
    seedsNeeded,
    chanceOfRaisingNextSeason,
    testDue: due,
    lastSafeSeason: safeUntil,
    ...decision,
    urgency: seedsLeft === 0 ? 0 : urgencyOf({ action: decision.action, rescue: decision.rescue, ...risks }),
    forecastRefusal: null,
  };
}

/** When the next test is due, from the ageing at which the chance of being below passes one half and one tenth. */
function dueTest(lot: LotToJudge, threshold: number, initialViability: number, viabilityNow: number): TestDue {
  const { posterior, today, probitsLostNow, probitsPerDay, receivedOn, lastTestedOn } = lot;
  const since =
    lastTestedOn === null
      ? { on: receivedOn, probitsLost: 0 }
      : { on: lastTestedOn, probitsLost: lot.probitsLostAtLastTest ?? lostBefore(lot, lastTestedOn) };
  const decline: Decline = { today, probitsLostNow, probitsPerDay, since };
  const start = straightGuess(probitsLostNow, threshold, initialViability, viabilityNow);
  const untilBelow = probitsUntilBelow(posterior, { threshold, chance: 0.5, start }) ?? Number.POSITIVE_INFINITY;
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

/** Ageing at which the median would reach the threshold, were it falling straight in probits: where the search begins. */
function straightGuess(lostNow: number, threshold: number, initialViability: number, viabilityNow: number): number {
  const initial = fastProbit(Math.min(MOST_ALIVE, initialViability));
  const fallen = initial - fastProbit(Math.min(MOST_ALIVE, Math.max(1 - MOST_ALIVE, viabilityNow)));
  const rate = lostNow > LEAST_TELLING_AGEING && fallen > 0 ? fallen / lostNow : 1;
  return Math.max(LEAST_TELLING_AGEING, (initial - fastProbit(threshold)) / rate);
}

/** Ageing up to an earlier day, at the present rate. */
function lostBefore({ today, probitsLostNow, probitsPerDay }: LotToJudge, on: CalendarDate): number {
  return Math.max(0, probitsLostNow - probitsPerDay * Math.max(0, daysBetween(on, today)));
}
