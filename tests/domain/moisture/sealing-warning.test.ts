import { expect, test } from 'vitest';
import type { SeedKind } from '../../../lib/domain/longevity/seed-kind';
import { yearsInWords } from '../../../lib/domain/longevity/years-in-words';
import { sealingWarning } from '../../../lib/domain/moisture/sealing-warning';
import { goldenRows } from '../../support/golden-table';

/** Onion as published, with an oil of its own choosing. */
const ONION: SeedKind = {
  constants: { KE: 6.975, CW: 3.47, CH: 0.04, CQ: 0.000428 },
  constantsRange: {},
  oilFraction: 0.2,
  storageBehaviour: 'orthodox',
};
const sealing = (moisturePercent: number, overrides: object = {}) =>
  sealingWarning({ moisturePercent, temperatureC: -18, container: 'glass-jar', seed: ONION, ...overrides });

test('above 9 % is too moist to seal, at 9 % in the freezer it is not', () => {
  expect(sealing(9)).toBeNull();
  expect(sealing(9.1)).toMatch(
    /^9.1 % is too moist to seal for long \(9 % at most by common practice\): dry it to about 5.1 % first/,
  );
});

test('above 15 % no forecast is given, at 15 % it still is', () => {
  expect(sealing(15)).toContain('By the equation');
  expect(sealing(15.1)).toMatch(/^At 15.1 % moisture sealed seed heats, moulds and suffocates/);
  expect(sealing(15.1)).not.toContain('By the equation');
});

test("tells how long it keeps as R's arithmetic of the equation does", () => {
  let told = 0;
  for (const row of goldenRows<{ moisturePercent: number; temperatureC: number; days: number }>(
    'moisture-of-stays',
    'sealed',
  )) {
    const warning = sealing(row.moisturePercent, { temperatureC: row.temperatureC });
    if (warning === null) continue;
    told += 1;
    expect(warning, JSON.stringify(row)).toContain(`in ${yearsInWords(row.days)} at`);
  }
  expect(told).toBeGreaterThan(12);
});

test('drier seed is warned of where it keeps less than three years and drying would at least double that', () => {
  expect(sealing(8, { temperatureC: 4 })).toBeNull();
  expect(sealing(8, { temperatureC: 20 })).toMatch(
    /^Sealed at 8 % it will not keep long here: dry it to about 5.1 % first/,
  );
  // It keeps less than three years there too, but drying would gain too little.
  expect(sealing(6, { temperatureC: 30 })).toBeNull();
});

test('an open container is not sealed', () => {
  expect(sealing(20, { container: 'paper-envelope' })).toBeNull();
});

test('seed that dies when dried is never to be sealed; without constants the common rule stands alone', () => {
  expect(sealing(6, { seed: { ...ONION, storageBehaviour: 'recalcitrant' } })).toContain('dies when dried');
  expect(sealing(9.1, { seed: null })).toBe(
    '9.1 % is too moist to seal for long (9 % at most by common practice): dry it first.',
  );
  expect(sealing(8, { seed: null, temperatureC: 25 })).toBeNull();
  expect(() => sealing(0)).toThrow(RangeError);
});
