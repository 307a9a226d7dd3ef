/**
 * When a lot is due for its next germination test. Every test uses up seed, so testing too often empties the packet it
 * should protect; testing too late finds the lot dead.
 *
 * The rule: a third of the predicted time from the last test to the threshold, at most 40 years (FAO 4.3.3, from memory);
 * and never later than the day on which the chance of being below the threshold passes 10 % (this product's own).
 */
import { addDays, addMonths, type CalendarDate, daysBetween } from '../calendar/calendar-date';

/** Share of the predicted time after which to test again. FAO 4.3.3, from memory. */
export const SHARE_OF_PREDICTED_TIME = 1 / 3;
/** Longest time between tests. FAO 4.3.3, from memory. */
export const LONGEST_INTERVAL_YEARS = 40;
/** Time between tests when nothing can be predicted. FAO 4.3.3, from memory: 10 years, 5 or less if short-lived. */
export const INTERVAL_YEARS_WITHOUT_FORECAST = { 'long-lived': 10, 'short-lived': 5 } as const;
/** A first test follows within this time of receipt. FAO 2014, 4.3.1 (published). */
export const FIRST_TEST_WITHIN_MONTHS = 12;

const DAYS_PER_YEAR = 365.25;

export type TestDueRule = 'third-of-time' | 'chance-of-being-below' | 'never-tested' | 'cap' | 'no-forecast';

export interface TestDue {
  dueOn: CalendarDate;
  rule: TestDueRule;
  /** why, in plain words */
  sentence: string;
}

/**
 * The day on which a lot's next test is due.
 *
 * @param receivedOn              harvest or receipt, whichever is later: when the lot came into the bank's care
 * @param lastTestedOn            end of its latest test; null when it was never tested
 * @param daysFromTestToThreshold predicted days from the last test until the lot is at its threshold, >= 0; Infinity when
 *                                it does not fall that far; null when no forecast is given. Not used before a first test
 * @param chancePassesOn          the day on which the chance of being below passes 10 %; null when it does not, or when
 *                                no forecast is given. A day before the last test counts as that day
 * @param life                    how long-lived the kind is, for a lot without forecast; 'short-lived' when in doubt
 * @returns the day, the rule that set it, and a sentence
 * @throws RangeError when a date does not exist, or the days are negative or NaN
 * @see FAO Genebank Standards 2014: 4.3.1 published; 4.3.3 from memory
 * Checked in tests/domain/regrow/test-due.test.ts
 */
export function testDue({
  receivedOn,
  lastTestedOn,
  daysFromTestToThreshold,
  chancePassesOn,
  life,
}: {
  receivedOn: CalendarDate;
  lastTestedOn: CalendarDate | null;
  daysFromTestToThreshold: number | null;
  chancePassesOn: CalendarDate | null;
  life: 'long-lived' | 'short-lived';
}): TestDue {
  if (daysFromTestToThreshold !== null && !(daysFromTestToThreshold >= 0)) {
    throw new RangeError(`testDue: daysFromTestToThreshold must be >= 0 or null, got ${daysFromTestToThreshold}`);
  }
  const since = lastTestedOn ?? receivedOn;
  const byInterval = dueByInterval({ receivedOn, lastTestedOn, daysFromTestToThreshold, life });
  if (chancePassesOn === null || daysBetween(byInterval.dueOn, chancePassesOn) >= 0) return byInterval;

  const atOnce = daysBetween(since, chancePassesOn) <= 0;
  const dueOn = atOnce ? since : chancePassesOn;
  if (lastTestedOn === null) return { ...byInterval, dueOn };
  return {
    dueOn,
    rule: 'chance-of-being-below',
    sentence: atOnce
      ? 'At its last test the chance of being below the line was already over 10 %.'
      : 'On this day the chance of being below the line passes 10 %.',
  };
}

function dueByInterval({
  receivedOn,
  lastTestedOn,
  daysFromTestToThreshold,
  life,
}: {
  receivedOn: CalendarDate;
  lastTestedOn: CalendarDate | null;
  daysFromTestToThreshold: number | null;
  life: 'long-lived' | 'short-lived';
}): TestDue {
  if (lastTestedOn === null) {
    return {
      dueOn: addMonths(receivedOn, FIRST_TEST_WITHIN_MONTHS),
      rule: 'never-tested',
      sentence: `Never tested: a first test is due within ${FIRST_TEST_WITHIN_MONTHS} months of receipt.`,
    };
  }
  if (daysFromTestToThreshold === null) {
    const years = INTERVAL_YEARS_WITHOUT_FORECAST[life];
    return {
      dueOn: addMonths(lastTestedOn, 12 * years),
      rule: 'no-forecast',
      sentence: `No forecast for this lot: tested every ${years} years, as ${life} seed.`,
    };
  }
  if (daysFromTestToThreshold < 1) {
    return {
      dueOn: lastTestedOn,
      rule: 'third-of-time',
      sentence: 'At its last test it was already at the line or below it.',
    };
  }
  const days = daysFromTestToThreshold * SHARE_OF_PREDICTED_TIME;
  if (days > LONGEST_INTERVAL_YEARS * DAYS_PER_YEAR) {
    return {
      dueOn: addMonths(lastTestedOn, 12 * LONGEST_INTERVAL_YEARS),
      rule: 'cap',
      sentence: `A third of its predicted time is over ${LONGEST_INTERVAL_YEARS} years, the longest between two tests.`,
    };
  }
  return {
    dueOn: addDays(lastTestedOn, Math.floor(days)),
    rule: 'third-of-time',
    sentence: `A third of the ${inWords(daysFromTestToThreshold)} predicted from its last test to the line.`,
  };
}

/** A time in the unit in which a person would say it. */
function inWords(days: number): string {
  const [count, unit] =
    days < 60
      ? [Math.round(days), 'day']
      : days < 2 * DAYS_PER_YEAR
        ? [Math.round(days / (DAYS_PER_YEAR / 12)), 'month']
        : [Math.round(days / DAYS_PER_YEAR), 'year'];
  return `${count} ${unit}${count === 1 ? '' : 's'}`;
}
