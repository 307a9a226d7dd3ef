import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SpreadLine } from '../../../lib/domain/stock/balance-uncertainty';
import { spreadOfAmount } from '../../../lib/domain/stock/spread-of-amount';
import {
  choicesFor,
  differenceOf,
  effectOf,
  type LookedAt,
  weighDifference,
} from '../../../lib/domain/stock/stock-take-difference';

const found = (rest: Partial<LookedAt> = {}): LookedAt => ({
  finding: 'here',
  expectedSeeds: 500,
  seeds: 500,
  belongsHere: true,
  ...rest,
});

describe('what may be decided', () => {
  test.each([
    ['as expected', found(), 0, []],
    ['only ticked', found({ seeds: null }), null, []],
    ['short', found({ seeds: 463 }), -37, ['correct', 'loss', 'leave']],
    ['over', found({ seeds: 520 }), 20, ['correct', 'leave']],
    ['here, but empty', found({ seeds: 0 }), -500, ['correct', 'loss', 'leave']],
    ['not here', found({ finding: 'not-here', seeds: null }), -500, ['loss', 'leave']],
    ['not here, and empty by the ledger', found({ finding: 'not-here', seeds: null, expectedSeeds: 0 }), 0, []],
    ['not here, and moved away meanwhile', found({ finding: 'not-here', seeds: null, belongsHere: false }), -500, []],
    ['belongs elsewhere, ticked', found({ seeds: null, belongsHere: false }), null, ['move-here', 'leave']],
    ['belongs elsewhere, as expected', found({ belongsHere: false }), 0, ['move-here', 'leave']],
    ['belongs elsewhere, short', found({ belongsHere: false, seeds: 1 }), -499, ['move-here', 'correct', 'leave']],
  ] as const)('%s', (_, line, difference, choices) => {
    expect(differenceOf(line)).toBe(difference);
    expect(choicesFor(line)).toEqual(choices);
  });
});

describe('what a decision writes', () => {
  const count = (seeds: number) => ({ reason: 'count', seeds });
  const loss = (seeds: number) => ({ reason: 'loss', seeds });

  test.each([
    ['as expected', found(), null, [count(0)], false],
    ['only ticked', found({ seeds: null }), null, [], false],
    ['short, corrected', found({ seeds: 463 }), 'correct', [count(-37)], false],
    ['short, a loss, and known afresh', found({ seeds: 463 }), 'loss', [loss(-37), count(0)], false],
    ['short, left', found({ seeds: 463 }), 'leave', [], false],
    ['over, corrected', found({ seeds: 520 }), 'correct', [count(20)], false],
    ['not here, a loss', found({ finding: 'not-here', seeds: null }), 'loss', [loss(-500)], false],
    ['not here, left', found({ finding: 'not-here', seeds: null }), 'leave', [], false],
    ['not here, should not be', found({ finding: 'not-here', seeds: null, belongsHere: false }), null, [], false],
    ['elsewhere, moved', found({ seeds: null, belongsHere: false }), 'move-here', [], true],
    ['elsewhere, moved and corrected', found({ seeds: 1, belongsHere: false }), 'move-here', [count(-499)], true],
    ['elsewhere, only corrected', found({ seeds: 1, belongsHere: false }), 'correct', [count(-499)], false],
  ] as const)('%s', (_, line, decision, movements, movesHere) => {
    expect(effectOf(line, decision)).toEqual({ movements, movesHere });
  });

  test('an open difference needs a decision, and only one that may be taken', () => {
    expect(() => effectOf(found({ seeds: 463 }), null)).toThrow(/correct, loss, leave/);
    expect(() => effectOf(found({ seeds: 520 }), 'loss')).toThrow(RangeError);
    expect(() => effectOf(found(), 'correct')).toThrow(/none/);
  });

  test('after any decision but to leave it, a counted packet holds what was counted', () => {
    const line = fc.record({
      finding: fc.constant('here' as const),
      expectedSeeds: fc.integer({ min: 0, max: 1000 }),
      seeds: fc.integer({ min: 0, max: 1000 }),
      belongsHere: fc.boolean(),
    });
    fc.assert(
      fc.property(line, (lookedAt) => {
        for (const decision of choicesFor(lookedAt)) {
          const { movements } = effectOf(lookedAt, decision);
          const after = movements.reduce((sum, { seeds }) => sum + seeds, lookedAt.expectedSeeds);
          expect(after).toBe(decision === 'leave' ? lookedAt.expectedSeeds : lookedAt.seeds);
        }
      }),
      { seed: 20261130 },
    );
  });
});

describe('weighDifference', () => {
  const own = { lotHasSeedWeight: true };
  const line = (seeds: number, grams: number | null): SpreadLine => ({
    id: `${seeds}`,
    reason: 'deposit',
    seeds,
    grams,
    seedsSd: spreadOfAmount({ seeds, weighedG: grams }),
    correctsId: null,
  });
  const weighed = (seeds: number, grams: number) => ({
    seeds,
    grams,
    seedsSd: spreadOfAmount({ seeds, weighedG: grams }),
  });

  test('between two counts one seed is too many', () => {
    const counted = { seeds: 499, grams: null, seedsSd: 0 };
    expect(weighDifference([line(500, null)], counted, own)).toEqual({ sd: 0, unexplained: true });
    expect(weighDifference([line(500, null)], { ...counted, seeds: 500 }, own).unexplained).toBe(false);
  });

  test('a packet that was filled by weight explains some per cent of a count', () => {
    // 4000 seeds, 3 % off: 120 and a little more, 1.645 times
    const ledger = [line(4000, 10.4001)];
    expect(weighDifference(ledger, { seeds: 3820, grams: null, seedsSd: 0 }, own).unexplained).toBe(false);
    expect(weighDifference(ledger, { seeds: 3780, grams: null, seedsSd: 0 }, own).unexplained).toBe(true);
  });

  test('weighed in and weighed again by the same seed weight explains far less', () => {
    const ledger = [line(4000, 10.4001)];
    const { sd, unexplained } = weighDifference(ledger, weighed(3820, 9.9321), own);
    expect(sd).toBeLessThan(40);
    expect(unexplained).toBe(true);
    expect(weighDifference(ledger, weighed(3980, 10.3481), own).unexplained).toBe(false);
  });
});
