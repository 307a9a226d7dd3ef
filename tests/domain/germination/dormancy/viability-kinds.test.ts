import { describe, expect, test } from 'vitest';
import {
  ALL_VIABILITY_CLASSES,
  recordedResult,
  type StoredViabilityCounts,
  VIABILITY_CLASS_LABELS,
} from '@/lib/domain/germination/dormancy/viability-kinds';

const none: StoredViabilityCounts = {
  stainedNormally: null,
  stainedAbnormally: null,
  unstained: null,
  firm: null,
  empty: null,
  insectDamaged: null,
  dead: null,
};

describe('a recorded viability test', () => {
  test('of tetrazolium counts seed stained as it should be as alive, of all that was stained', () => {
    const counts = { ...none, stainedNormally: 45, stainedAbnormally: 3, unstained: 2 };
    const result = recordedResult('tetrazolium', counts);
    expect(result).toMatchObject({ seeds: 50, alive: 45, shows: 'alive' });
    // R prop.test(45, 50, correct = FALSE)
    expect(result.estimate.interval.lower).toBeCloseTo(0.7864, 4);
  });

  test('of cutting gives the most that can be alive, of all that was cut', () => {
    const result = recordedResult('cut', { ...none, firm: 38, empty: 6, insectDamaged: 2, dead: 4 });
    expect(result).toMatchObject({ seeds: 50, alive: 38, shows: 'at-most-alive' });
    expect('worthless' in result && result.worthless.proportion).toBe(0.16);
  });

  test('takes no notice of counts of the other kind', () => {
    expect(recordedResult('cut', { ...none, firm: 10, stainedNormally: 90 })).toMatchObject({ seeds: 10, alive: 10 });
  });

  test('without a seed is refused', () => {
    expect(() => recordedResult('cut', none)).toThrow(RangeError);
  });
});

test('every class has a name of its own, and stands in one kind only', () => {
  expect(new Set(ALL_VIABILITY_CLASSES).size).toBe(ALL_VIABILITY_CLASSES.length);
  expect(Object.keys(VIABILITY_CLASS_LABELS).sort()).toEqual([...ALL_VIABILITY_CLASSES].sort());
  expect(new Set(Object.values(VIABILITY_CLASS_LABELS)).size).toBe(ALL_VIABILITY_CLASSES.length);
});
