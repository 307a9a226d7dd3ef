import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ACTIONS, urgencyOf } from '../../../lib/domain/regrow/urgency';

const chances = fc.double({ min: 0, max: 1, noNaN: true });
const lots = fc.record({
  rescue: fc.constant(false),
  chanceBelow: chances,
  chanceWaitingFails: chances,
  isOnlyLot: fc.boolean(),
  hasSafetyDuplicate: fc.boolean(),
});

test('a rescue comes before any regrowing, that before any test, that before any lot to leave', () => {
  fc.assert(
    fc.property(lots, lots, (worse, better) => {
      const rescue = urgencyOf({ ...better, action: 'regrow', rescue: true });
      const regrow = urgencyOf({ ...worse, action: 'regrow' });
      expect(rescue).toBeGreaterThan(regrow);
      expect(urgencyOf({ ...better, action: 'regrow' })).toBeGreaterThan(urgencyOf({ ...worse, action: 'test-first' }));
      expect(urgencyOf({ ...better, action: 'test-first' })).toBeGreaterThan(urgencyOf({ ...worse, action: 'leave' }));
    }),
    { seed: 20260117 },
  );
});

test('more risk is more urgent; so is being the only lot, and having no safety duplicate', () => {
  fc.assert(
    fc.property(lots, fc.constantFrom(...ACTIONS), (lot, action) => {
      const urgency = urgencyOf({ ...lot, action });
      expect(urgencyOf({ ...lot, action, chanceBelow: Math.min(1, lot.chanceBelow + 0.1) })).toBeGreaterThanOrEqual(
        urgency,
      );
      expect(urgencyOf({ ...lot, action, isOnlyLot: true })).toBeGreaterThanOrEqual(urgency);
      expect(urgencyOf({ ...lot, action, hasSafetyDuplicate: false })).toBeGreaterThanOrEqual(urgency);
    }),
    { seed: 20260118 },
  );
});

test('stays inside its hundred: 200 with no risk, 299 at the worst', () => {
  const worst = { chanceBelow: 1, chanceWaitingFails: 1, isOnlyLot: true, hasSafetyDuplicate: false };
  expect(urgencyOf({ ...worst, action: 'regrow', rescue: false })).toBe(299);
  expect(urgencyOf({ ...worst, chanceBelow: 0, chanceWaitingFails: 0, action: 'regrow', rescue: false })).toBe(200);
});
