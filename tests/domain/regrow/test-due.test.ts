import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, daysBetween } from '../../../lib/domain/calendar/calendar-date';
import { testDue } from '../../../lib/domain/regrow/test-due';

const tested = {
  receivedOn: '2015-10-01',
  lastTestedOn: '2016-01-31',
  daysFromTestToThreshold: 3652.5,
  chancePassesOn: null,
  life: 'long-lived',
} as const;

describe('the published rule (FAO 4.3.3, from memory)', () => {
  test('a lot that was at the line at its last test is due again at once, and says so', () => {
    const due = testDue({
      receivedOn: '2015-10-01',
      lastTestedOn: '2020-03-01',
      daysFromTestToThreshold: 0,
      chancePassesOn: '2020-06-01',
      life: 'short-lived',
    });
    expect(due).toEqual({
      dueOn: '2020-03-01',
      rule: 'third-of-time',
      sentence: 'At its last test it was already at the line or below it.',
    });
  });

  test('due after a third of the predicted time from the last test', () => {
    expect(testDue(tested)).toEqual({
      dueOn: addDays('2016-01-31', 1217),
      rule: 'third-of-time',
      sentence: 'A third of the 10 years predicted from its last test to the line.',
    });
  });

  test('never more than 40 years after the last test', () => {
    const days120Years = 120 * 365.25;
    expect(testDue({ ...tested, daysFromTestToThreshold: days120Years }).rule).toBe('third-of-time');
    expect(testDue({ ...tested, daysFromTestToThreshold: days120Years + 4 })).toMatchObject({
      rule: 'cap',
      dueOn: '2056-01-31',
    });
    expect(testDue({ ...tested, daysFromTestToThreshold: Number.POSITIVE_INFINITY })).toMatchObject({
      rule: 'cap',
      dueOn: '2056-01-31',
    });
  });

  test('without a forecast: 10 years for long-lived kinds, 5 for short-lived', () => {
    const unknown = { ...tested, daysFromTestToThreshold: null };
    expect(testDue(unknown)).toMatchObject({ rule: 'no-forecast', dueOn: '2026-01-31' });
    expect(testDue({ ...unknown, life: 'short-lived' })).toMatchObject({ rule: 'no-forecast', dueOn: '2021-01-31' });
  });
});

describe('a first test (FAO 2014, 4.3.1)', () => {
  const untested = { ...tested, lastTestedOn: null };

  test('is due within 12 months of receipt, whatever the forecast', () => {
    expect(testDue(untested)).toMatchObject({ rule: 'never-tested', dueOn: '2016-10-01' });
    expect(testDue({ ...untested, daysFromTestToThreshold: null })).toMatchObject({ dueOn: '2016-10-01' });
  });

  test('is due sooner when the chance of being below passes 10 % sooner', () => {
    expect(testDue({ ...untested, chancePassesOn: '2016-03-01' })).toMatchObject({
      rule: 'never-tested',
      dueOn: '2016-03-01',
    });
    expect(testDue({ ...untested, chancePassesOn: '2011-03-01' }).dueOn).toBe('2015-10-01');
  });
});

describe('the chance of being below', () => {
  test('brings the test forward to the day on which it passes 10 %', () => {
    expect(testDue({ ...tested, chancePassesOn: '2017-05-20' })).toMatchObject({
      rule: 'chance-of-being-below',
      dueOn: '2017-05-20',
    });
  });

  test('never puts it off', () => {
    expect(testDue({ ...tested, chancePassesOn: '2030-05-20' }).rule).toBe('third-of-time');
  });

  test('makes it due from the last test when it had passed 10 % by then', () => {
    const due = testDue({ ...tested, chancePassesOn: '2010-05-20' });
    expect(due.dueOn).toBe('2016-01-31');
    expect(due.sentence).toContain('already over 10 %');
  });
});

test('is never before the last test nor more than 40 years after it', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1e7, noNaN: true }),
      fc.option(fc.integer({ min: -5000, max: 100_000 }).map((days) => addDays(tested.lastTestedOn, days))),
      (daysFromTestToThreshold, chancePassesOn) => {
        const { dueOn } = testDue({ ...tested, daysFromTestToThreshold, chancePassesOn });
        expect(daysBetween(tested.lastTestedOn, dueOn)).toBeGreaterThanOrEqual(0);
        expect(dueOn <= '2056-01-31').toBe(true);
        if (chancePassesOn !== null && chancePassesOn > tested.lastTestedOn) {
          expect(dueOn <= chancePassesOn).toBe(true);
        }
      },
    ),
    { seed: 20260115 },
  );
});

test.each([
  [45, 'A third of the 45 days predicted'],
  [300, 'A third of the 10 months predicted'],
  [31, 'A third of the 31 days predicted'],
])('says %d days as a person would', (days, sentence) => {
  expect(testDue({ ...tested, daysFromTestToThreshold: days }).sentence).toContain(sentence);
});

test('refuses negative times and dates that do not exist', () => {
  expect(() => testDue({ ...tested, daysFromTestToThreshold: -1 })).toThrow(/daysFromTestToThreshold.*-1/);
  expect(() => testDue({ ...tested, lastTestedOn: '2016-02-30' })).toThrow(RangeError);
});
