import type { CropFacts } from '../crop-facts';
import {
  federalGermination,
  guideIsolation,
  guidePlants,
  ORTHODOX,
  oilFraction,
  seedsPerGram,
  storageLife,
} from '../fact-builders';
import { federalMethod } from '../germination-builders';

/** The cabbage species: one species, so its forms all cross with each other. */
export const CABBAGES: readonly CropFacts[] = [
  {
    name: 'Cabbage',
    scientificName: 'Brassica oleracea (capitata group)',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Cabbage family (distance, plants)', '1/2 mi', 'from memory'),
      guidePlants('Cabbage family (distance, plants)', '50-100', 'from memory'),
      federalGermination('Cabbage', 75),
      seedsPerGram('Cabbage', '315'),
      storageLife('Cabbage', { A: '4', B: '3', C: '3-5', D: '4' }),
      oilFraction(0.33, 0.39),
    ],
    germination: [
      federalMethod('vegetable', 'Cabbage', {
        substrata: ['B', 'P', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 10,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 3 days; 0.2 % potassium nitrate and light.',
      }),
    ],
  },
  {
    name: 'Kale',
    scientificName: 'Brassica oleracea (acephala group)',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Cabbage family (distance, plants)', '1/2 mi', 'from memory'),
      guidePlants('Cabbage family (distance, plants)', '50-100', 'from memory'),
      federalGermination('Kale', 75),
      seedsPerGram('Kale', '315'),
      storageLife('Kale', { A: '4', B: '2', C: '3-5', D: '4' }),
      oilFraction(0.33, 0.39),
    ],
    germination: [
      federalMethod('vegetable', 'Kale', {
        substrata: ['B', 'P', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 10,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 3 days; 0.2 % potassium nitrate and light.',
      }),
    ],
  },
  {
    name: 'Collard',
    scientificName: 'Brassica oleracea (acephala group, collards)',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Cabbage family (distance, plants)', '1/2 mi', 'from memory'),
      guidePlants('Cabbage family (distance, plants)', '50-100', 'from memory'),
      federalGermination('Collards', 80),
      seedsPerGram('Collards', '315'),
      storageLife('Collards', { A: '4', C: '3-5', D: '4' }),
      oilFraction(0.33, 0.39),
    ],
    germination: [
      federalMethod('vegetable', 'Collards', {
        substrata: ['B', 'P', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 10,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 3 days; 0.2 % potassium nitrate and light.',
      }),
    ],
  },
  {
    name: 'Broccoli',
    scientificName: 'Brassica oleracea (italica group)',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Cabbage family (distance, plants)', '1/2 mi', 'from memory'),
      guidePlants('Cabbage family (distance, plants)', '50-100', 'from memory'),
      federalGermination('Broccoli', 75),
      seedsPerGram('Broccoli', '315'),
      storageLife('Broccoli', { A: '3', C: '3-5', D: '3' }),
      oilFraction(0.33, 0.39),
    ],
    germination: [
      federalMethod('vegetable', 'Broccoli', {
        substrata: ['B', 'P', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 10,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 3 days; 0.2 % potassium nitrate and light.',
      }),
    ],
  },
  {
    name: 'Cauliflower',
    scientificName: 'Brassica oleracea (botrytis group)',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Cabbage family (distance, plants)', '1/2 mi', 'from memory'),
      guidePlants('Cabbage family (distance, plants)', '50-100', 'from memory'),
      federalGermination('Cauliflower', 75),
      seedsPerGram('Cauliflower', '315'),
      storageLife('Cauliflower', { A: '4', B: '4', C: '3-5', D: '4' }),
      oilFraction(0.33, 0.39),
    ],
    germination: [
      federalMethod('vegetable', 'Cauliflower', {
        substrata: ['B', 'P', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 10,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 3 days; 0.2 % potassium nitrate and light.',
      }),
    ],
  },
  {
    name: 'Kohlrabi',
    scientificName: 'Brassica oleracea (gongylodes group)',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Cabbage family (distance, plants)', '1/2 mi', 'from memory'),
      guidePlants('Cabbage family (distance, plants)', '50-100', 'from memory'),
      federalGermination('Kohlrabi', 75),
      seedsPerGram('Kohlrabi', '315'),
      storageLife('Kohlrabi', { A: '3', B: '3', C: '3-5', D: '3' }),
      oilFraction(0.33, 0.39),
    ],
    germination: [
      federalMethod('vegetable', 'Kohlrabi', {
        substrata: ['B', 'P', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 10,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 3 days; 0.2 % potassium nitrate and light.',
      }),
    ],
  },
  {
    name: 'Brussels sprouts',
    scientificName: 'Brassica oleracea (gemmifera group)',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Cabbage family (distance, plants)', '1/2 mi', 'from memory'),
      guidePlants('Cabbage family (distance, plants)', '50-100', 'from memory'),
      federalGermination('Brussels sprouts', 70),
      seedsPerGram('Brussels sprouts', '315'),
      storageLife('Brussels sprouts', { A: '4', C: '3-5' }),
      oilFraction(0.33, 0.39),
    ],
    germination: [
      federalMethod('vegetable', 'Brussels sprouts', {
        substrata: ['B', 'P', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 10,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 5 or 10 C for 3 days; 0.2 % potassium nitrate and light.',
      }),
    ],
  },
];
