import { describe, expect, test } from 'vitest';
import { type DecisionFigures, decideAction } from '../../../lib/domain/regrow/decide-action';

/** A lot in good health, tested, with seed for many regrowings; each test says what is different. */
const healthy: DecisionFigures = {
  today: '2026-11-25',
  nextSeason: 2027,
  seedsLeft: 1000,
  plantsNeeded: 40,
  seedsNeeded: 70,
  seedsNeededAtMedian: 60,
  seedsPerTest: 50,
  viabilityNow: { median: 0.93, lower: 0.88, upper: 0.97 },
  threshold: 0.8,
  chanceBelowNow: 0.01,
  chanceBelowNextSeason: 0.02,
  everTested: true,
  testDue: {
    dueOn: '2031-04-05',
    rule: 'third-of-time',
    sentence: 'A third of the 12 years predicted from its last test to the line.',
  },
  contradictoryTests: null,
  lastSafeSeason: 2045,
  isOnlyLot: false,
  hasSafetyDuplicate: true,
};
const decide = (change: Partial<DecisionFigures>) => decideAction({ ...healthy, ...change });
const dueNow = (rule: DecisionFigures['testDue']['rule']) => ({
  testDue: { dueOn: '2026-11-25', rule, sentence: 'Because.' },
});

describe('leave', () => {
  test('a healthy lot, saying until when and when it is tested next', () => {
    expect(decide({})).toEqual({
      action: 'leave',
      rescue: false,
      reasons: ['Can wait: safe to regrow until 2045; next test due 2031-04-05.'],
      sentence: 'Can wait: safe to regrow until 2045; next test due 2031-04-05.',
    });
    expect(decide({ lastSafeSeason: 'beyond horizon' }).sentence).toContain('for generations');
  });

  test('an empty lot: there is nothing to regrow or test', () => {
    expect(decide({ seedsLeft: 0, lastSafeSeason: 'past', chanceBelowNow: 1, ...dueNow('never-tested') })).toEqual({
      action: 'leave',
      rescue: false,
      reasons: ['No seed left.'],
      sentence: 'No seed left.',
    });
  });

  test('what is at stake is told even when nothing is to be done', () => {
    const { reasons, sentence } = decide({ isOnlyLot: true, hasSafetyDuplicate: false });
    expect(reasons.slice(1)).toEqual(['Only lot of its accession.', 'No safety duplicate.']);
    expect(sentence).toMatch(/^Can wait/);
  });
});

describe('regrow', () => {
  test('from a chance of one half of being below now', () => {
    expect(decide({ chanceBelowNow: 0.5, chanceBelowNextSeason: 0.55, isOnlyLot: true })).toMatchObject({
      action: 'regrow',
      rescue: false,
      sentence: 'Already below the line more likely than not; only lot of its accession.',
    });
    expect(decide({ chanceBelowNow: 0.49, chanceBelowNextSeason: 0.495 }).action).toBe('leave');
  });

  test('from a chance of one half of being below by the next sowing', () => {
    expect(decide({ chanceBelowNow: 0.45, chanceBelowNextSeason: 0.5, hasSafetyDuplicate: false })).toMatchObject({
      action: 'regrow',
      sentence: 'More likely than not below the line by the sowing of 2027; no safety duplicate.',
    });
  });

  test('when the next season is the last safe one', () => {
    expect(decide({ lastSafeSeason: 2027 })).toMatchObject({
      action: 'regrow',
      sentence: '2027 is the last safe season to regrow it.',
    });
    expect(decide({ lastSafeSeason: 2028 }).action).toBe('leave');
  });

  test('an only lot whose seed is enough for one regrowing and not for two', () => {
    const runningOut = 'Seed is running out: enough for one regrowing, not for two.';
    expect(decide({ seedsLeft: 139, isOnlyLot: true })).toMatchObject({
      action: 'regrow',
      reasons: [runningOut, 'Only lot of its accession.'],
    });
    expect(decide({ seedsLeft: 140, isOnlyLot: true }).action).toBe('leave');
  });

  test('one of several lots with little seed only once it is at risk', () => {
    expect(decide({ seedsLeft: 100 })).toMatchObject({ action: 'leave' });
    expect(decide({ seedsLeft: 100 }).reasons[1]).toContain('running out');
    expect(decide({ seedsLeft: 100, chanceBelowNextSeason: 0.1 })).toMatchObject({ action: 'regrow' });
  });
});

describe('rescue', () => {
  test('a tested lot past its last safe season is regrown at once', () => {
    expect(decide({ lastSafeSeason: 'past', seedsLeft: 100, seedsNeeded: 240 })).toMatchObject({
      action: 'regrow',
      rescue: true,
      sentence: 'Rescue: 100 seeds left, 240 needed to be sure of a regrowing in 2027.',
    });
  });

  test('says when the seeds are fewer than the plants, and when none can be relied on', () => {
    expect(decide({ lastSafeSeason: 'past', seedsLeft: 1 }).sentence).toBe(
      'Rescue: 1 seed left, fewer than the 40 plants needed.',
    );
    expect(decide({ lastSafeSeason: 'past', seedsNeeded: Number.POSITIVE_INFINITY }).sentence).toContain(
      'it may be dead',
    );
  });

  test('one that was never tested is counted first if the seed allows: it may only be unknown', () => {
    const unknown = {
      lastSafeSeason: 'past',
      everTested: false,
      viabilityNow: { median: 0.7, lower: 0.1, upper: 0.95 },
    } as const;
    expect(decide({ ...unknown, seedsLeft: 400, seedsNeeded: 900 })).toMatchObject({
      action: 'test-first',
      rescue: true,
      sentence: 'Never tested: its viability may be anything from 10 to 95 %.',
    });
    expect(decide({ ...unknown, seedsLeft: 109, seedsNeeded: 900 })).toMatchObject({ action: 'regrow', rescue: true });
  });
});

describe('test first', () => {
  test('when the test is due and leaves the seed that a regrowing takes', () => {
    expect(
      decide({ ...dueNow('chance-of-being-below'), chanceBelowNow: 0.22, chanceBelowNextSeason: 0.25 }),
    ).toMatchObject({
      action: 'test-first',
      sentence: 'A test is due: the chance of being below the line is about 22 %.',
    });
    expect(decide(dueNow('third-of-time')).sentence).toBe('A test is due. Because.');
    expect(decide({ testDue: { ...healthy.testDue, dueOn: '2026-11-26' } }).action).toBe('leave');
  });

  test('but regrow when it would take the seed that a regrowing needs, if the lot is alone or at risk', () => {
    // 170 seeds: two regrowings of 70, and 130 short of a test of 120 and a regrowing of 60.
    const little = { ...dueNow('third-of-time'), seedsLeft: 170, seedsPerTest: 120 };
    expect(decide(little).action).toBe('leave');
    expect(decide({ ...little, isOnlyLot: true })).toMatchObject({ action: 'regrow' });
    expect(decide({ ...little, chanceBelowNextSeason: 0.1 })).toMatchObject({
      action: 'regrow',
      sentence: 'A test is due, but it would take the seed that a regrowing needs.',
    });
  });

  test('a lot never tested is counted before it is regrown, unless it is all but certainly below', () => {
    const untested = { everTested: false, ...dueNow('never-tested'), chanceBelowNow: 0.6 };
    expect(decide({ ...untested, chanceBelowNextSeason: 0.62 }).action).toBe('test-first');
    expect(decide({ ...untested, chanceBelowNow: 0.9, chanceBelowNextSeason: 0.9 }).action).toBe('regrow');
  });

  test('tests that disagree across the line wait for the next count, even when more likely below than not', () => {
    expect(decide({ contradictoryTests: [0.88, 0.71], chanceBelowNow: 0.6, chanceBelowNextSeason: 0.6 })).toMatchObject(
      {
        action: 'test-first',
        sentence: 'Two tests disagree (88 and 71); the next count decides.',
      },
    );
  });

  test('tests that disagree on one side of the line decide nothing, but are told', () => {
    expect(decide({ contradictoryTests: [0.99, 0.88] })).toMatchObject({ action: 'leave' });
    expect(decide({ contradictoryTests: [0.99, 0.88] }).reasons[1]).toBe('Two tests disagree (99 and 88).');
    const below = decide({ contradictoryTests: [0.7, 0.5], chanceBelowNow: 0.99, chanceBelowNextSeason: 0.99 });
    expect(below.action).toBe('regrow');
    expect(below.sentence).toContain('Already below the line');
  });

  test('tests that disagree are not settled by a count that the seed cannot spare', () => {
    expect(
      decide({ contradictoryTests: [0.88, 0.71], seedsLeft: 100, chanceBelowNow: 0.6, chanceBelowNextSeason: 0.6 })
        .action,
    ).toBe('regrow');
  });
});

test('every reason is a sentence', () => {
  const changes: Partial<DecisionFigures>[] = [
    {},
    { lastSafeSeason: 'past', ...dueNow('never-tested'), everTested: false, contradictoryTests: [0.9, 0.6] },
    {
      chanceBelowNow: 0.9,
      chanceBelowNextSeason: 0.95,
      isOnlyLot: true,
      hasSafetyDuplicate: false,
      lastSafeSeason: 2027,
    },
  ];
  for (const change of changes) {
    const { reasons, sentence } = decide(change);
    for (const text of [...reasons, sentence]) expect(text).toMatch(/^[A-Z0-9].*\.$/);
  }
});
