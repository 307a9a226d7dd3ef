import { expect, test } from 'vitest';
import { dryingTarget } from '../../../lib/domain/moisture/drying-target';
import { goldenRows } from '../../support/golden-table';

const seed = (overrides: object = {}) => ({
  constantsRange: {},
  oilFraction: 0.2,
  storageBehaviour: 'orthodox' as const,
  ...overrides,
});

test("the target is R's equilibrium at 15 % and 15 °C to a tenth, and drying helps down to that at 10.6 % and 20 °C", () => {
  for (const row of goldenRows<{ oilFraction: number; atRest: number; lowest: number }>(
    'moisture-of-stays',
    'targets',
  )) {
    const target = dryingTarget(seed({ oilFraction: row.oilFraction }));
    if (!target.ok) throw new Error(target.reason);
    expect(Math.abs(target.moisturePercent - row.atRest)).toBeLessThanOrEqual(0.05 + 1e-12);
    expect(Number(target.moisturePercent.toFixed(1))).toBe(target.moisturePercent);
    expect(Math.abs(target.lowestPercent / row.lowest - 1)).toBeLessThan(1e-13);
  }
});

test('seed whose low-moisture limit is higher is not dried below it', () => {
  const pea = seed({ oilFraction: 0.02, constantsRange: { lowMoistureLimitPercent: 6.24 } });
  expect(dryingTarget(pea)).toEqual({ ok: true, moisturePercent: 6.2, lowestPercent: 6.24 });
});

test('there is no target for seed that dies when dried or bears it in part', () => {
  expect(dryingTarget(seed({ storageBehaviour: 'recalcitrant' }))).toMatchObject({
    ok: false,
    reason: expect.stringContaining('dies when dried'),
  });
  expect(dryingTarget(seed({ storageBehaviour: 'intermediate' })).ok).toBe(false);
});
