import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MOVEMENT_DIRECTIONS, MOVEMENT_REASONS } from '../../../lib/domain/stock/movement-reasons';
import { balance, canWithdraw, type Movement } from '../../../lib/domain/stock/packet-ledger';

const counted = (reason: Movement['reason'], seeds: number): Movement => ({ reason, seeds, grams: null });
const weighed = (reason: Movement['reason'], grams: number): Movement => ({ reason, seeds: null, grams });

describe('balance', () => {
  test('is the sum of the movements', () => {
    const ledger = [counted('deposit', 500), counted('test', -100), counted('sharing', -30), counted('correction', 12)];
    expect(balance(ledger)).toEqual({ seeds: 382, grams: null, seedsEstimated: false, gramsEstimated: false });
  });

  test('an empty ledger holds nothing', () => {
    expect(balance([])).toEqual({ seeds: 0, grams: 0, seedsEstimated: false, gramsEstimated: false });
  });

  test('taking out in grams what was put in leaves exactly nothing', () => {
    // 0.1 + 0.2 - 0.3 is 5.6e-17 in binary.
    expect(balance([weighed('deposit', 0.1), weighed('deposit', 0.2), weighed('sowing', -0.3)]).grams).toBe(0);
  });

  test('the unit that was not stated comes from the thousand-seed weight, and is marked as estimated', () => {
    // 52.6 g per 1000: 10 g hold 190.1 seeds; 50 counted out leave 140.
    const ledger = [weighed('deposit', 10), counted('test', -50)];
    expect(balance(ledger, 52.6)).toEqual({ seeds: 140, grams: 7.37, seedsEstimated: true, gramsEstimated: true });
  });

  test('without a thousand-seed weight a unit that any movement leaves out is not known', () => {
    const ledger: Movement[] = [{ reason: 'deposit', seeds: 200, grams: 10 }, counted('test', -50)];
    expect(balance(ledger)).toMatchObject({ seeds: 150, grams: null });
  });

  test('does not depend on the order of the lines', () => {
    const line = fc.record({
      reason: fc.constant('correction' as const),
      seeds: fc.integer({ min: -1000, max: 1000 }),
      grams: fc.constant(null),
    });
    fc.assert(
      fc.property(fc.array(line, { maxLength: 20 }), (ledger) => {
        expect(balance([...ledger].reverse(), 4)).toEqual(balance(ledger, 4));
      }),
      { seed: 20260110 },
    );
  });

  test.each(MOVEMENT_REASONS.filter((reason) => MOVEMENT_DIRECTIONS[reason] !== 'either'))(
    'refuses a %s that goes the wrong way',
    (reason) => {
      const wrongWay = MOVEMENT_DIRECTIONS[reason] === 'in' ? -1 : 1;
      expect(() => balance([counted(reason, wrongWay)])).toThrow(RangeError);
      expect(() => balance([weighed(reason, wrongWay)])).toThrow(RangeError);
      expect(balance([counted(reason, -wrongWay)]).seeds).toBe(-wrongWay);
    },
  );

  test('refuses part seeds, empty lines, and seeds and grams that go opposite ways', () => {
    expect(() => balance([counted('deposit', 1.5)])).toThrow(/1\.5/);
    expect(() => balance([{ reason: 'deposit', seeds: null, grams: null }])).toThrow(/neither/);
    expect(() => balance([{ reason: 'correction', seeds: 5, grams: -1 }])).toThrow(/opposite/);
    expect(() => balance([weighed('deposit', Number.NaN)])).toThrow(RangeError);
    expect(() => balance([], 0)).toThrow(/thousandSeedWeightG/);
  });
});

describe('canWithdraw', () => {
  const ledger = [counted('deposit', 100), counted('test', -40)];

  test('lets the last seed go, and not one more', () => {
    expect(canWithdraw(ledger, { seeds: 60, grams: null })).toMatchObject({ ok: true, after: { seeds: 0 } });
    expect(canWithdraw(ledger, { seeds: 61, grams: null })).toEqual({
      ok: false,
      reason: 'not-enough',
      sentence: 'The packet holds 60 seeds; 61 seeds cannot be taken out.',
    });
  });

  test('checks every unit that is stated', () => {
    const both: Movement[] = [{ reason: 'deposit', seeds: 100, grams: 5 }];
    expect(canWithdraw(both, { seeds: 50, grams: 5.1 })).toMatchObject({ ok: false, reason: 'not-enough' });
    expect(canWithdraw(both, { seeds: 50, grams: 2.5 })).toMatchObject({
      ok: true,
      after: { seeds: 50, grams: 2.5 },
    });
  });

  test('takes grams from a counted packet only through a thousand-seed weight', () => {
    expect(canWithdraw(ledger, { seeds: null, grams: 1 })).toMatchObject({ ok: false, reason: 'balance-unknown' });
    expect(canWithdraw(ledger, { seeds: null, grams: 1 }, 50)).toMatchObject({ ok: true, after: { seeds: 40 } });
  });

  test('whatever is let go leaves a balance of at least zero', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 1, max: 600 }), (held, wanted) => {
        const answer = canWithdraw([counted('deposit', held)], { seeds: wanted, grams: null });
        expect(answer.ok).toBe(wanted <= held);
        if (answer.ok) expect(answer.after.seeds).toBe(held - wanted);
      }),
      { seed: 20260111 },
    );
  });

  test('refuses amounts that are not amounts', () => {
    expect(() => canWithdraw(ledger, { seeds: 0, grams: null })).toThrow(/amount\.seeds/);
    expect(() => canWithdraw(ledger, { seeds: null, grams: -1 })).toThrow(/amount\.grams/);
    expect(() => canWithdraw(ledger, { seeds: null, grams: null })).toThrow(/neither/);
  });
});
