import type { CropFacts } from '../crop-facts';
import {
  federalGermination,
  federalIsolation,
  guideIsolation,
  guidePlants,
  ORTHODOX,
  oilFraction,
  recalled,
  seedsPerGram,
  storageLife,
} from '../fact-builders';
import { federalMethod } from '../germination-builders';

/** Okra and cotton. */
export const MALLOWS: readonly CropFacts[] = [
  {
    name: 'Okra',
    scientificName: 'Abelmoschus esculentus',
    family: 'Malvaceae',
    pollination: 'mostly self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause: 'no constants for okra are published; cotton is the same family (Malvaceae)',
    facts: [
      federalIsolation(
        'Okra',
        { foundation: 1320, registered: 1320, certified: 825 },
        'Foundation field 0 off-types; Registered 1:2,500; Certified 1:1,250; seed 0.0/0.5/1.0 %',
      ),
      {
        kind: 'isolation distance',
        lower: 500,
        upper: 500,
        text: 'bees visit the flowers',
        mark: 'common practice',
        source: 'World Vegetable Center advice as quoted, https://goreading.org/articles_7clcga.html',
      },
      guideIsolation('Okra (plants)', '500 ft-1/2 mi', 'from memory'),
      guidePlants('Okra (plants)', '10-25', 'from memory', '50 for keeping rare types'),
      federalGermination('Okra', 50),
      seedsPerGram('Okra', '19'),
      storageLife('Okra', { A: '2', B: '4', D: '2' }),
      oilFraction(0.14, 0.22),
    ],
    germination: [
      federalMethod('vegetable', 'Okra', {
        substrata: ['B', 'T'],
        temperatures: '20-30',
        firstCountDays: 4,
        finalCountDays: 14,
        hardSeedOccurs: true,
      }),
    ],
  },
  {
    name: 'Cotton',
    scientificName: 'Gossypium hirsutum',
    family: 'Malvaceae',
    pollination: 'mostly self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: false,
    borrowedBecause: null,
    facts: [
      federalIsolation(
        'Cotton',
        { foundation: 0, registered: 0, certified: 0 },
        '100 ft if contaminant differs by easily observable characters; upland vs Egyptian 1,320/1,320/660 ft',
      ),
      guidePlants('Cotton', '25-50', 'from memory'),
      recalled('minimum germination', 0.8, 0.8, 'EU oil and fibre plant seed directive 2002/57/EC, not checked'),
      seedsPerGram('Cotton', '8'),
      recalled('storage life', 2, 5, 'delinted seed in a cool room'),
      oilFraction(0.17, 0.23),
    ],
    germination: [
      federalMethod('agricultural', 'Cotton', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20-30; 30',
        firstCountDays: 4,
        finalCountDays: 12,
        preTreatment:
          'Fresh or dormant seed: shake with water in a closed jar until the lint is wet through, then blot off the excess.',
        hardSeedOccurs: true,
      }),
    ],
  },
];
