import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimateAfterStopping } from '../../../../lib/domain/germination/sample-size/estimate-after-stopping';
import { germinatedCountChances } from '../../../../lib/domain/germination/sample-size/germinated-count';
import { operatingCharacteristic } from '../../../../lib/domain/germination/sample-size/operating-characteristic';
import { PUBLISHED_SEQUENTIAL_PLAN } from '../../../../lib/domain/germination/sample-size/published-sequential-plan';
import type { SequentialPlan } from '../../../../lib/domain/germination/sample-size/sequential-plan';
import { expectClose, goldenRows } from '../../../support/golden-table';
import { anyPlan } from './any-plan';
import { goldenPlan } from './golden-plans';

interface Row {
  plan: string;
  seedsTested: number;
  germinated: number;
  stops: number;
  unbiased: number | null;
}

test('agrees with ways counted in R, and refuses the counts at which the plan does not stop', () => {
  for (const row of goldenRows<Row>('sequential-plan', 'estimates')) {
    const found = estimateAfterStopping(goldenPlan(row.plan), row);
    expect(found.ok, JSON.stringify(row)).toBe(row.stops === 1);
    if (found.ok) expectClose(found.unbiased, row.unbiased ?? Number.NaN, 1e-9, row);
  }
});

/** Chance of stopping at each count, by a plain recursion of the test's own. */
function stops(plan: SequentialPlan, germination: number) {
  const all: { seedsTested: number; germinated: number; chance: number }[] = [];
  let going = new Map([[0, 1]]);
  let tested = 0;
  for (const [index, look] of plan.looks.entries()) {
    const group = germinatedCountChances(look.seedsTested - tested, germination);
    tested = look.seedsTested;
    const next = new Map<number, number>();
    for (const [count, chance] of going) {
      for (const [more, chanceOfMore] of group.entries()) {
        next.set(count + more, (next.get(count + more) ?? 0) + chance * chanceOfMore);
      }
    }
    going = new Map();
    for (const [germinated, chance] of next) {
      const goesOn = germinated > (look.regrowAtMost ?? -1) && germinated < (look.keepAtLeast ?? tested + 1);
      if (goesOn && index < plan.looks.length - 1) going.set(germinated, chance);
      else all.push({ seedsTested: tested, germinated, chance });
    }
  }
  return all;
}

test('has no bias: its mean over every stop is the true germination, while the plain share has the bias computed', () => {
  fc.assert(
    fc.property(anyPlan, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (plan, germination) => {
      let unbiased = 0;
      let plain = 0;
      for (const stop of stops(plan, germination)) {
        const found = estimateAfterStopping(plan, stop);
        if (!found.ok) throw new Error(`${JSON.stringify(stop)} is a stop of ${JSON.stringify(plan)}`);
        unbiased += stop.chance * found.unbiased;
        plain += stop.chance * found.plain;
      }
      expect(unbiased).toBeCloseTo(germination, 10);
      expect(plain - germination).toBeCloseTo(operatingCharacteristic(plan, germination).bias, 10);
    }),
    { seed: 20261125, numRuns: 60 },
  );
});

test('at the first look both are the same; later the plain share is the further from the line', () => {
  const at = (seedsTested: number, germinated: number) => {
    const found = estimateAfterStopping(PUBLISHED_SEQUENTIAL_PLAN, { seedsTested, germinated });
    if (!found.ok) throw new Error('not a stop');
    return found;
  };
  expect(at(40, 20)).toEqual({ ok: true, plain: 0.5, unbiased: 0.5 });
  const regrown = at(80, 60);
  expect(regrown.unbiased).toBeGreaterThan(regrown.plain);
  const kept = at(160, 147);
  expect(kept.unbiased).toBeLessThan(kept.plain);
});

test('refuses what is no count', () => {
  const at = (seedsTested: number, germinated: number) =>
    estimateAfterStopping(PUBLISHED_SEQUENTIAL_PLAN, { seedsTested, germinated });
  expect(() => at(40, 41)).toThrow(RangeError);
  expect(() => at(40, -1)).toThrow(RangeError);
  expect(at(50, 2)).toEqual({ ok: false, reason: 'no-stop-of-this-plan' });
});
