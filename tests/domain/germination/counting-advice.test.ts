import { expect, test } from 'vitest';
import { countingAdvice } from '../../../lib/domain/germination/counting-advice';

const keys = (family: string, scientificName: string, hardSeedOccurs = false) =>
  countingAdvice({ family, scientificName, hardSeedOccurs }).map((advice) => advice.key);

test('swollen seed of legumes, okra and cotton gets five more days (7 CFR 201.57)', () => {
  expect(keys('Fabaceae', 'Vicia faba')).toContain('swollen-seed');
  expect(keys('Malvaceae', 'Abelmoschus esculentus')).toContain('swollen-seed');
  expect(keys('Amaryllidaceae', 'Allium ampeloprasum')).not.toContain('swollen-seed');
});

test('hard seed is explained where the method expects it', () => {
  expect(keys('Fabaceae', 'Trifolium repens', true)).toContain('hard-seed');
  expect(keys('Fabaceae', 'Vicia faba', false)).not.toContain('hard-seed');
});

test('a cluster of beet or chard counts as one (7 CFR 201.56)', () => {
  expect(keys('Amaranthaceae', 'Beta vulgaris subsp. cicla')).toContain('clusters');
  expect(keys('Amaranthaceae', 'Spinacia oleracea')).not.toContain('clusters');
});

test('every advice names its source', () => {
  for (const advice of countingAdvice({ family: 'Fabaceae', scientificName: 'Beta x', hardSeedOccurs: true })) {
    expect(advice.source).not.toBe('');
  }
});
