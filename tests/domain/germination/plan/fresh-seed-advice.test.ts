import { expect, test } from 'vitest';
import { freshSeedExpected, prechillAdvice } from '@/lib/domain/germination/plan/fresh-seed-advice';
import { CROPS } from '@/lib/domain/reference/all-crops';

test('says for how long to pre-chill, and whether only fresh seed needs it', () => {
  expect(prechillAdvice('Prechill (cold and moist) at 10 C for 3 days before the test.')).toEqual({
    when: 'always',
    days: 3,
  });
  expect(
    prechillAdvice(
      'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 5 days, or predry at 35-40 C for 5-7 days.',
    ),
  ).toEqual({ when: 'fresh', days: 5 });
  expect(prechillAdvice('Fresh or dormant seed: test at 15 C.')).toBeNull();
  expect(prechillAdvice(null)).toBeNull();
});

test('every method of the reference that speaks of pre-chilling is understood', () => {
  for (const { name, germination } of CROPS) {
    for (const { preTreatment } of germination) {
      const advice = prechillAdvice(preTreatment);
      expect(advice !== null, `${name}: ${preTreatment}`).toBe(/prechill/i.test(preTreatment ?? ''));
    }
  }
});

test('fresh seed is expected in the half year after harvest, and where the last test found it', () => {
  expect(freshSeedExpected({ daysSinceHarvest: 180, lastTest: null })).toBe(true);
  expect(freshSeedExpected({ daysSinceHarvest: 181, lastTest: null })).toBe(false);
  expect(freshSeedExpected({ daysSinceHarvest: 2000, lastTest: { seeds: 100, fresh: 5 } })).toBe(true);
  expect(freshSeedExpected({ daysSinceHarvest: 90, lastTest: { seeds: 100, fresh: 4 } })).toBe(false);
});
