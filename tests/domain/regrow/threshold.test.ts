import { expect, test } from 'vitest';
import { lotThreshold, STANDARD_THRESHOLD, thresholdPercent } from '../../../lib/domain/regrow/threshold';

// Manual of Seed Handling in Genebanks (2006), Table 8.2: initial germination %, regenerate if below %.
const TABLE_8_2 = [
  [100, 85],
  [99, 84],
  [98, 83],
  [97, 82],
  [96, 82],
  [95, 81],
  [94, 80],
  [93, 79],
  [92, 78],
  [91, 77],
  [90, 77],
  [89, 76],
  [88, 75],
  [87, 74],
  [86, 73],
  [85, 72],
] as const;

test.each(TABLE_8_2)('a lot that began at %d %% is due below %d %%', (initial, expected) => {
  const threshold = lotThreshold({ rule: STANDARD_THRESHOLD, initialViability: initial / 100 });
  expect(threshold).toBeCloseTo(0.85 * (initial / 100), 14);
  expect(thresholdPercent(threshold)).toBe(expected);
});

test('an absolute rule does not care how the lot began', () => {
  const rule = { kind: 'absolute', germination: 0.6 } as const;
  expect(lotThreshold({ rule, initialViability: 0.99 })).toBe(0.6);
  expect(lotThreshold({ rule, initialViability: 0.5 })).toBe(0.6);
});

test('refuses percentages and empty lots', () => {
  expect(() => lotThreshold({ rule: STANDARD_THRESHOLD, initialViability: 90 })).toThrow(/initialViability.*90/);
  expect(() => lotThreshold({ rule: STANDARD_THRESHOLD, initialViability: 0 })).toThrow(/initialViability/);
  expect(() => lotThreshold({ rule: { kind: 'fraction-of-initial', fraction: 85 }, initialViability: 0.9 })).toThrow(
    /fraction.*85/,
  );
  expect(() => lotThreshold({ rule: { kind: 'absolute', germination: 1 }, initialViability: 0.9 })).toThrow(
    /germination/,
  );
  expect(() => thresholdPercent(85)).toThrow(/85/);
});
