import type { CropFacts } from '../crop-facts';
import {
  federalIsolation,
  guideIsolation,
  guidePlants,
  ORTHODOX,
  oilFraction,
  recalled,
  seedsPerGram,
} from '../fact-builders';
import { federalMethod } from '../germination-builders';

/** Cool-season cereals. */
export const CEREALS: readonly CropFacts[] = [
  {
    name: 'Barley',
    scientificName: 'Hordeum vulgare',
    family: 'Poaceae',
    pollination: 'self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'barley',
    constantsBorrowed: false,
    borrowedBecause: null,
    facts: [
      federalIsolation(
        'Barley (non hybrid)',
        { foundation: 0, registered: 0, certified: 0 },
        'distance adequate to prevent mechanical mixture',
      ),
      guideIsolation('Barley, wheat, oat', '10-20 ft', 'from memory'),
      guidePlants('Barley, wheat, oat', '20-100', 'from memory'),
      recalled('minimum germination', 0.85, 0.85, 'EU cereal seed directive 66/402/EEC, certified seed, not checked'),
      seedsPerGram('Barley', '30'),
      recalled('storage life', 3, 5, 'dry grain in a cool room'),
      oilFraction(0.02, 0.03),
    ],
    germination: [
      federalMethod('agricultural', 'Barley', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20; 15',
        firstCountDays: 4,
        finalCountDays: 7,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 5 days, or predry at 35-40 C for 5-7 days.',
      }),
    ],
  },
  {
    name: 'Wheat',
    scientificName: 'Triticum aestivum',
    family: 'Poaceae',
    pollination: 'self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'wheat',
    constantsBorrowed: false,
    borrowedBecause: null,
    facts: [
      federalIsolation(
        'Wheat (nonhybrid)',
        { foundation: 0, registered: 0, certified: 0 },
        'distance adequate to prevent mechanical mixture',
      ),
      guideIsolation('Barley, wheat, oat', '10-20 ft', 'from memory'),
      guidePlants('Barley, wheat, oat', '20-100', 'from memory'),
      recalled('minimum germination', 0.85, 0.85, 'EU cereal seed directive 66/402/EEC, certified seed, not checked'),
      seedsPerGram('Wheat, common', '25'),
      recalled('storage life', 2, 5, 'dry grain in a cool room'),
      oilFraction(0.015, 0.025),
    ],
    germination: [
      federalMethod('agricultural', 'Wheat, common', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20; 15',
        firstCountDays: 4,
        finalCountDays: 7,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 5 days, or predry at 35-40 C for 5-7 days.',
      }),
    ],
  },
  {
    name: 'Durum wheat',
    scientificName: 'Triticum durum',
    family: 'Poaceae',
    pollination: 'self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'wheat',
    constantsBorrowed: true,
    borrowedBecause: 'bread wheat is the same genus (Triticum)',
    facts: [
      federalIsolation(
        'Wheat (nonhybrid)',
        { foundation: 0, registered: 0, certified: 0 },
        'distance adequate to prevent mechanical mixture',
      ),
      recalled('minimum plants', 20, 100, 'as for wheat, the same group'),
      recalled('minimum germination', 0.85, 0.85, 'EU cereal seed directive 66/402/EEC, certified seed, not checked'),
      seedsPerGram('Wheat, durum', '25'),
      recalled('storage life', 2, 5, 'as for wheat, the same group'),
      oilFraction(0.015, 0.025),
    ],
    germination: [
      federalMethod('agricultural', 'Wheat, durum', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20; 15',
        firstCountDays: 4,
        finalCountDays: 10,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 5 days, or predry at 35-40 C for 5-7 days.',
      }),
    ],
  },
  {
    name: 'Spelt',
    scientificName: 'Triticum spelta',
    family: 'Poaceae',
    pollination: 'self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'wheat',
    constantsBorrowed: true,
    borrowedBecause: 'bread wheat is the same genus (Triticum), and by some botanists the same species',
    facts: [
      federalIsolation(
        'Wheat (nonhybrid)',
        { foundation: 0, registered: 0, certified: 0 },
        'distance adequate to prevent mechanical mixture',
      ),
      recalled('minimum plants', 20, 100, 'as for wheat, the same group'),
      recalled('minimum germination', 0.85, 0.85, 'EU cereal seed directive 66/402/EEC, certified seed, not checked'),
      seedsPerGram('Spelt', '25'),
      recalled('storage life', 2, 5, 'as for wheat, the same group; stored in the husk'),
      oilFraction(0.015, 0.03),
    ],
    germination: [
      federalMethod('agricultural', 'Spelt', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20; 15',
        firstCountDays: 4,
        finalCountDays: 7,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 5 days, or predry at 35-40 C for 5-7 days.',
      }),
    ],
  },
  {
    name: 'Oat',
    scientificName: 'Avena sativa',
    family: 'Poaceae',
    pollination: 'self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'barley',
    constantsBorrowed: true,
    borrowedBecause:
      'barley and wheat are the nearest relatives published; barley agrees better with the ordinary storage life of oat',
    facts: [
      federalIsolation(
        'Oat',
        { foundation: 0, registered: 0, certified: 0 },
        'distance adequate to prevent mechanical mixture',
      ),
      guideIsolation('Barley, wheat, oat', '10-20 ft', 'from memory'),
      guidePlants('Barley, wheat, oat', '20-100', 'from memory'),
      recalled(
        'minimum germination',
        0.85,
        0.85,
        'EU cereal seed directive 66/402/EEC, certified seed, not checked; naked oat 0.75',
      ),
      seedsPerGram('Oat', '35-50'),
      recalled('storage life', 3, 5, 'dry grain in a cool room'),
      oilFraction(0.05, 0.08),
    ],
    germination: [
      federalMethod('agricultural', 'Oat', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20; 15',
        firstCountDays: 5,
        finalCountDays: 10,
        preTreatment:
          'Prechill (cold and moist) at 5 or 10 C for 5 days and test for 7 days, or predry (35-40 C, 5-7 days) and test for 10 days.',
      }),
    ],
  },
  {
    name: 'Rye',
    scientificName: 'Secale cereale',
    family: 'Poaceae',
    pollination: 'wind',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'wheat',
    constantsBorrowed: true,
    borrowedBecause: 'published wheat is the nearest relative with constants of its own (tribe Triticeae)',
    facts: [
      federalIsolation('Rye', { foundation: 660, registered: 660, certified: 660 }),
      guidePlants('Rye', '100-200', 'from memory'),
      recalled('minimum germination', 0.85, 0.85, 'EU cereal seed directive 66/402/EEC, certified seed, not checked'),
      seedsPerGram('Rye', '40'),
      recalled('storage life', 1, 3, 'rye is known among cereals as a short keeper'),
      oilFraction(0.015, 0.025),
    ],
    germination: [
      federalMethod('agricultural', 'Rye', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20; 15',
        firstCountDays: 4,
        finalCountDays: 7,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 5 days, or predry at 35-40 C for 5-7 days.',
      }),
    ],
  },
  {
    name: 'Triticale',
    scientificName: 'x Triticosecale',
    family: 'Poaceae',
    pollination: 'mostly self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'wheat',
    constantsBorrowed: true,
    borrowedBecause: 'wheat is one of its two parents',
    facts: [
      federalIsolation(
        'Triticale',
        { foundation: 0, registered: 0, certified: 0 },
        'distance adequate to prevent mechanical mixture',
      ),
      recalled('minimum plants', 20, 100, 'as for wheat, the same group'),
      recalled('minimum germination', 0.8, 0.8, 'EU cereal seed directive 66/402/EEC, certified seed, not checked'),
      recalled('seeds per gram', 20, 30, 'thousand-seed weight about 35-50 g'),
      recalled('storage life', 2, 4, 'between wheat and rye'),
      oilFraction(0.015, 0.025),
    ],
    germination: [
      federalMethod('agricultural', 'Triticale', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20; 15',
        firstCountDays: 4,
        finalCountDays: 7,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 5 days, or predry at 35-40 C for 5-7 days.',
      }),
    ],
  },
];
