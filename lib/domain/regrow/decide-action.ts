/**
 * From a lot's figures to what is to be done, and why, in plain words. The rules are listed in order in
 * docs/methods/regrow-decision.md; the first that applies decides.
 */
import type { CalendarDate } from '../calendar/calendar-date';
import type { LastSafeSeason } from './last-safe-season';
import type { TestDue } from './test-due';
import type { Action } from './urgency';
import { CHANCE_THAT_NEEDS_NO_TEST, isWorthTesting } from './worth-testing';

/** More likely below than not: grow it again without further counting. */
export const CHANCE_THAT_CALLS_FOR_REGROWING = 0.5;
/** Below this chance a lot with little seed may wait, when it is not the only one. The same 10 % calls for a test. */
export const CHANCE_THAT_MAY_WAIT = 0.1;
/** What decides. Proportions and chances are 0-1. */
export interface DecisionFigures {
  today: CalendarDate;
  nextSeason: number;
  seedsLeft: number;
  plantsNeeded: number;
  /** for the next season with the wanted assurance; Infinity when no number is enough */
  seedsNeeded: number;
  /** the same if the lot is as alive as its median says: what a test must leave over */
  seedsNeededAtMedian: number;
  seedsPerTest: number;
  viabilityNow: { median: number; lower: number; upper: number };
  threshold: number;
  chanceBelowNow: number;
  chanceBelowNextSeason: number;
  everTested: boolean;
  testDue: TestDue;
  /** viability in two tests that differ by more than chance allows; null when none do */
  contradictoryTests: readonly [number, number] | null;
  lastSafeSeason: LastSafeSeason;
  isOnlyLot: boolean;
  hasSafetyDuplicate: boolean;
}

export interface Decision {
  action: Action;
  /** past its last safe season, with seed left to save */
  rescue: boolean;
  /** most important first; each a plain sentence */
  reasons: string[];
  /** the first reason, with what is at stake */
  sentence: string;
}

/**
 * What to do with a lot for which a forecast is given.
 *
 * @param figures  see DecisionFigures
 * @returns action, rescue, reasons and sentence
 * Checked branch by branch in tests/domain/regrow/decide-action.test.ts
 */
export function decideAction(figures: DecisionFigures): Decision {
  const { seedsLeft, seedsNeeded, seedsNeededAtMedian, seedsPerTest, nextSeason, chanceBelowNextSeason } = figures;
  if (seedsLeft === 0) return { action: 'leave', rescue: false, reasons: ['No seed left.'], sentence: 'No seed left.' };

  const rescue = figures.lastSafeSeason === 'past';
  const reasons: string[] = [];
  const notes: string[] = []; // true, but they decide nothing
  let action: Action | null = null;
  const because = (reason: string, wanted: Action) => {
    reasons.push(reason);
    action ??= wanted;
  };

  const { everTested, chanceBelowNow } = figures;
  const testIsDue =
    figures.testDue.dueOn <= figures.today && isWorthTesting({ seedsLeft, everTested, chanceBelow: chanceBelowNow });
  // A test must leave what a regrowing takes, or it eats the seed that it should protect.
  const canAffordTest = seedsLeft - seedsPerTest >= seedsNeededAtMedian;
  // An untested lot is a guess until it is all but certain.
  const isGuess = !everTested && canAffordTest && chanceBelowNextSeason < CHANCE_THAT_NEEDS_NO_TEST;

  const contradiction = figures.contradictoryTests;
  if (contradiction !== null) {
    const says = `Two tests disagree (${percent(contradiction[0])} and ${percent(contradiction[1])})`;
    const straddles = Math.min(...contradiction) < figures.threshold && Math.max(...contradiction) >= figures.threshold;
    if (straddles && canAffordTest) because(`${says}; the next count decides.`, 'test-first');
    else notes.push(`${says}.`);
  }
  if (isGuess && (rescue || testIsDue)) because(neverTested(figures), 'test-first');
  if (rescue) because(pastLastSafeSeason(figures), 'regrow');
  if (figures.chanceBelowNow >= CHANCE_THAT_CALLS_FOR_REGROWING) {
    because('Already below the line more likely than not.', 'regrow');
  } else if (chanceBelowNextSeason >= CHANCE_THAT_CALLS_FOR_REGROWING) {
    because(`More likely than not below the line by the sowing of ${nextSeason}.`, 'regrow');
  }
  if (figures.lastSafeSeason === nextSeason) because(`${nextSeason} is the last safe season to regrow it.`, 'regrow');
  if (!rescue && seedsLeft >= seedsNeeded && seedsLeft < 2 * seedsNeeded) {
    const runningOut = 'Seed is running out: enough for one regrowing, not for two.';
    const mayWait = !figures.isOnlyLot && chanceBelowNextSeason < CHANCE_THAT_MAY_WAIT;
    if (mayWait) notes.push(runningOut);
    else because(runningOut, 'regrow');
  }
  if (testIsDue && !isGuess) {
    if (canAffordTest) because(testIsDueBecause(figures), 'test-first');
    else if (figures.isOnlyLot || chanceBelowNextSeason >= CHANCE_THAT_MAY_WAIT) {
      because('A test is due, but it would take the seed that a regrowing needs.', 'regrow');
    } else notes.push('A test is due, but it would take the seed that a regrowing needs.');
  }
  if (action === null) reasons.push(safeToLeave(figures));

  const decided = action ?? 'leave';
  const stakes: string[] = [];
  if (figures.isOnlyLot) stakes.push('only lot of its accession');
  if (!figures.hasSafetyDuplicate) stakes.push('no safety duplicate');
  reasons.push(...notes, ...stakes.map((stake) => `${capitalised(stake)}.`));
  const first = reasons[0] as string;
  const stake = decided === 'leave' ? undefined : stakes[0];
  return { action: decided, rescue, reasons, sentence: stake ? `${first.slice(0, -1)}; ${stake}.` : first };
}

function neverTested({ viabilityNow: { lower, upper } }: DecisionFigures): string {
  return `Never tested: its viability may be anything from ${percent(lower)} to ${percent(upper)} %.`;
}

function pastLastSafeSeason({ seedsLeft, plantsNeeded, seedsNeeded, nextSeason }: DecisionFigures): string {
  if (seedsLeft < plantsNeeded) {
    return `Rescue: ${countOf(seedsLeft)} left, fewer than the ${plantsNeeded} plants needed.`;
  }
  if (seedsNeeded === Number.POSITIVE_INFINITY) {
    return 'Rescue: it may be dead, so that no amount of its seed can be relied on.';
  }
  return `Rescue: ${countOf(seedsLeft)} left, ${seedsNeeded} needed to be sure of a regrowing in ${nextSeason}.`;
}

function testIsDueBecause({ testDue, chanceBelowNow }: DecisionFigures): string {
  return testDue.rule === 'chance-of-being-below'
    ? `A test is due: the chance of being below the line is about ${percent(chanceBelowNow)} %.`
    : `A test is due. ${testDue.sentence}`;
}

function safeToLeave({ lastSafeSeason, testDue }: DecisionFigures): string {
  const until =
    typeof lastSafeSeason === 'number' ? `safe to regrow until ${lastSafeSeason}` : 'safe to regrow for generations';
  return `Can wait: ${until}; next test due ${testDue.dueOn}.`;
}

const percent = (proportion: number): number => Math.round(100 * proportion);
const countOf = (seeds: number): string => (seeds === 1 ? '1 seed' : `${seeds} seeds`);
const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
