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
import { federalMethod, recalledMethod } from '../germination-builders';

/** Turnip, swede, Chinese cabbages, radish, mustard, rocket and cress. */
export const TURNIPS_AND_MUSTARDS: readonly CropFacts[] = [
  {
    name: 'Turnip',
    scientificName: 'Brassica rapa (rapa group)',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Turnip / Chinese cabbage', '1/2 mi', 'from memory'),
      guidePlants('Turnip / Chinese cabbage', '50-80', 'from memory'),
      federalGermination('Turnip', 80),
      seedsPerGram('Turnip', '535'),
      storageLife('Turnip', { A: '4', B: '4', C: '4' }),
      oilFraction(0.35, 0.41),
    ],
    germination: [
      federalMethod('vegetable', 'Turnip', {
        substrata: ['B', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 7,
      }),
    ],
  },
  {
    name: 'Swede',
    scientificName: 'Brassica napus (napobrassica group)',
    family: 'Brassicaceae',
    pollination: 'mostly self',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      recalled('isolation distance', 804.67, 1609.34, 'half a mile to a mile, as for turnip, the same group'),
      recalled('minimum plants', 50, 80, 'as for turnip, the same group'),
      federalGermination('Rutabaga', 75),
      seedsPerGram('Rutabaga', '430'),
      storageLife('Rutabaga', { A: '4', C: '3' }),
      oilFraction(0.36, 0.42),
    ],
    germination: [
      federalMethod('vegetable', 'Rutabaga', {
        substrata: ['B', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 14,
      }),
    ],
  },
  {
    name: 'Chinese cabbage',
    scientificName: 'Brassica rapa (pekinensis group)',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Turnip / Chinese cabbage', '1/2 mi', 'from memory'),
      guidePlants('Turnip / Chinese cabbage', '50-80', 'from memory'),
      federalGermination('Chinese cabbage', 75),
      seedsPerGram('Cabbage, Chinese', '635'),
      storageLife('Oriental greens', { A: '3', C: '3' }),
      oilFraction(0.35, 0.41),
    ],
    germination: [
      federalMethod('vegetable', 'Cabbage, Chinese', {
        substrata: ['B', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 7,
      }),
    ],
  },
  {
    name: 'Pak choi',
    scientificName: 'Brassica rapa (chinensis group)',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Turnip / Chinese cabbage', '1/2 mi', 'from memory'),
      guidePlants('Turnip / Chinese cabbage', '50-80', 'from memory'),
      federalGermination('Pak-choi', 75),
      seedsPerGram('Pak-choi', '635'),
      storageLife('Oriental greens', { A: '3', C: '3' }),
      oilFraction(0.35, 0.41),
    ],
    germination: [
      federalMethod('vegetable', 'Pak-choi', {
        substrata: ['B', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 7,
      }),
    ],
  },
  {
    name: 'Radish',
    scientificName: 'Raphanus sativus',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Radish', '1/2 mi', 'common practice'),
      guidePlants('Radish', '50', 'common practice'),
      federalGermination('Radish', 75),
      seedsPerGram('Radish', '75'),
      storageLife('Radish', { A: '5', B: '2', C: '4', D: '4', E: '5' }),
      oilFraction(0.32, 0.38),
    ],
    germination: [
      federalMethod('vegetable', 'Radish', {
        substrata: ['B', 'T'],
        temperatures: '20',
        firstCountDays: 4,
        finalCountDays: 6,
      }),
    ],
  },
  {
    name: 'Mustard',
    scientificName: 'Brassica juncea',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the cabbage family is published in full; lettuce is a small oily seed, and agrees with its ordinary storage life',
    facts: [
      federalIsolation('Mustard', { foundation: 1320, registered: null, certified: 660 }),
      guideIsolation('Mustard', '1/2 mi', 'common practice'),
      guidePlants('Mustard', '40', 'common practice'),
      federalGermination('Mustard, India', 75),
      seedsPerGram('Mustard, India', '625'),
      storageLife('Mustard', { E: '5' }),
      oilFraction(0.33, 0.4),
    ],
    germination: [
      federalMethod('vegetable', 'Mustard, India', {
        substrata: ['P'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 7,
        light: true,
        preTreatment:
          'Fresh or dormant seed: prechill (cold and moist) at 10 C for 7 days and test for 5 days more; 0.2 % potassium nitrate.',
      }),
    ],
  },
  {
    name: 'Rocket',
    scientificName: 'Eruca sativa',
    family: 'Brassicaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'soybean',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in its family is published in full; soybean is a dicot seed with storage oil, and agrees with its ordinary storage life (lettuce would give under a third of it)',
    facts: [
      guideIsolation('Arugula', '1/2 mi', 'common practice'),
      guidePlants('Arugula', '40', 'common practice'),
      recalled(
        'minimum germination',
        0.75,
        0.75,
        'as for turnip, the same group, and no standard recalled for rocket itself',
      ),
      recalled('seeds per gram', 500, 600, 'thousand-seed weight about 1.7-2.0 g'),
      storageLife('Arugula', { E: '5' }),
      oilFraction(0.26, 0.34),
    ],
    germination: [
      recalledMethod('international testing practice, not checked', {
        substrata: ['TB'],
        temperatures: '20',
        firstCountDays: 4,
        finalCountDays: 7,
      }),
    ],
  },
  {
    name: 'Garden cress',
    scientificName: 'Lepidium sativum',
    family: 'Brassicaceae',
    pollination: 'mostly self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in its family is published in full; cotton is a dicot seed of the same oil content, and agrees with its ordinary storage life (lettuce and soybean would give under a third of it)',
    facts: [
      recalled('isolation distance', 402.34, 804.67, 'a quarter to half a mile'),
      recalled('minimum plants', 25, 50, 'mostly self-pollinated'),
      federalGermination('Cress, garden', 75),
      seedsPerGram('Cress, garden', '425'),
      storageLife('Cress', { A: '5' }),
      oilFraction(0.2, 0.26),
    ],
    germination: [
      federalMethod('vegetable', 'Cress, garden', {
        substrata: ['B', 'P', 'T'],
        temperatures: '15',
        firstCountDays: 4,
        finalCountDays: 10,
        preTreatment: 'Fresh or dormant seed: give light.',
      }),
    ],
  },
];
