import { expect, test } from 'vitest';
import { CROP_NAMES, oilRange } from '../../lib/schemas/calculators/crop-oil';
import {
  airSchema,
  basisSchema,
  ovenSchema,
  progressSchema,
  reachSchema,
} from '../../lib/schemas/calculators/moisture-and-drying';
import { seedWeightSchema } from '../../lib/schemas/calculators/seed-weight';

/** The field that is refused, or null. */
function refused(result: { success: boolean; error?: { issues: { path: PropertyKey[] }[] } }): string | null {
  return result.success ? null : String(result.error?.issues[0]?.path[0]);
}

const OVEN = { dishA: '20', freshA: '25', dryA: '24.6', ovenStep: '0.001' };

test.each([
  [{}, null],
  [{ freshA: '20' }, 'freshA'],
  [{ dryA: '19' }, 'dryA'],
  [{ dryA: '25.1' }, 'dryA'],
  [{ dishB: '20' }, 'dishB'],
  [{ dishB: '20', freshB: '25', dryB: '24.6' }, null],
  [{ dishB: '20', freshB: '20', dryB: '20' }, 'freshB'],
  [{ dishB: '20', freshB: '25', dryB: '26' }, 'dryB'],
  [{ wetBefore: '100' }, 'wetAfter'],
  [{ wetBefore: '100', wetAfter: '101' }, 'wetAfter'],
  [{ wetBefore: '100', wetAfter: '80' }, null],
  [{ dishA: '0', freshA: '5', dryA: '4.6' }, null],
])('oven weights with %j: refused at %s', (change, field) => {
  expect(refused(ovenSchema.safeParse({ ...OVEN, ...change }))).toBe(field);
});

test('of fresh weight moisture stays under 100 %, of dry weight it may pass it', () => {
  expect(basisSchema.safeParse({ basisMoisture: '100', basis: 'fresh' }).success).toBe(false);
  expect(basisSchema.safeParse({ basisMoisture: '150', basis: 'dry' }).success).toBe(true);
});

test('what air brings seed to needs its oil: a crop of the list, or typed', () => {
  const air = { reachHumidity: '15', reachTemperature: '15' };
  expect(refused(reachSchema.safeParse(air))).toBe('reachCrop');
  expect(refused(reachSchema.safeParse({ ...air, reachCrop: 'Moonseed' }))).toBe('reachCrop');
  expect(reachSchema.safeParse({ ...air, reachCrop: 'Kale' }).success).toBe(true);
  expect(reachSchema.safeParse({ ...air, reachOil: '20' }).success).toBe(true);
});

test('every crop of the list has an oil range; typed oil goes before it', () => {
  for (const name of CROP_NAMES) expect(oilRange(name, undefined), name).not.toBeNull();
  expect(oilRange('Kale', undefined)).toEqual({ lower: 0.33, upper: 0.39 });
  expect(oilRange('Kale', 30)).toEqual({ lower: 0.3, upper: 0.3 });
  expect(oilRange(undefined, undefined)).toBeNull();
});

test('what air is needed asks for a temperature, a humidity, or both', () => {
  const wanted = { airMoisture: '6', airCrop: 'Kale' };
  expect(refused(airSchema.safeParse(wanted))).toBe('airTemperature');
  expect(airSchema.safeParse({ ...wanted, airHumidity: '20' }).success).toBe(true);
});

test('progress: a fault in the weighings is said beside them, and the target lies below the start', () => {
  const jar = { weighings: '0 500\n24 480', progressFrom: '12', progressTo: '7', progressStep: '0.1' };
  expect(progressSchema.safeParse(jar).data?.weighings.weighings).toHaveLength(2);
  expect(refused(progressSchema.safeParse({ ...jar, weighings: '0 500\nx' }))).toBe('weighings');
  expect(refused(progressSchema.safeParse({ ...jar, progressTo: '12' }))).toBe('progressTo');
});

test('replicate weights are read with point or comma; a word among them is named', () => {
  const read = (weights: string) => seedWeightSchema.safeParse({ weights, perReplicate: '100', weightStep: '0.0001' });
  expect(read('0.2224 0.2134\n0,2130; 0.2116 g').data?.weights).toEqual([0.2224, 0.2134, 0.213, 0.2116]);
  expect(read('0.2224, 0.2134').data?.weights).toEqual([0.2224, 0.2134]);
  expect(read('0.2224 about').error?.issues[0]?.message).toMatch(/"about" is not a weight/);
  expect(read('0.2224').error?.issues[0]?.message).toMatch(/at least two/);
  expect(read('0.2224 0').error?.issues[0]?.message).toMatch(/grams between/);
});
