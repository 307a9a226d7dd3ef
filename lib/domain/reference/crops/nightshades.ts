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

/** Tomato, pepper, aubergine, tomatillo and true potato seed. */
export const NIGHTSHADES: readonly CropFacts[] = [
  {
    name: 'Tomato',
    scientificName: 'Solanum lycopersicum',
    family: 'Solanaceae',
    pollination: 'self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'true potato seed, the same family, would give about half a year at 20 C and 50 % humidity, far below its ordinary storage life; cotton is a dicot seed of about the same oil content and agrees with it',
    facts: [
      federalIsolation(
        'Tomato',
        { foundation: 200, registered: 100, certified: 30 },
        'may be reduced by 50 % between classes of same variety',
      ),
      guideIsolation('Tomato', '10 ft', 'common practice'),
      guidePlants('Tomato', '10', 'common practice'),
      federalGermination('Tomato', 75),
      seedsPerGram('Tomato', '405'),
      storageLife('Tomato', { A: '5', B: '5', C: '3', D: '4', E: '5' }),
      oilFraction(0.2, 0.26),
    ],
    germination: [
      federalMethod('vegetable', 'Tomato', {
        substrata: ['B', 'P', 'RB', 'T'],
        temperatures: '20-30',
        firstCountDays: 5,
        finalCountDays: 14,
        preTreatment: 'Fresh or dormant seed: light and 0.2 % potassium nitrate.',
      }),
    ],
  },
  {
    name: 'Pepper',
    scientificName: 'Capsicum spp.',
    family: 'Solanaceae',
    pollination: 'mostly self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'true potato seed, the same family, would give about half a year at 20 C and 50 % humidity, far below its ordinary storage life; cotton is a dicot seed of about the same oil content and agrees with it',
    facts: [
      federalIsolation(
        'Pepper',
        { foundation: 200, registered: 100, certified: 30 },
        'may be reduced by 50 % between classes of same variety',
      ),
      guideIsolation('Pepper', '100 ft', 'common practice'),
      guidePlants('Pepper', '10', 'common practice'),
      federalGermination('Pepper', 55),
      seedsPerGram('Pepper', '165'),
      storageLife('Pepper', { A: '2', B: '3', D: '3', E: '4' }),
      oilFraction(0.16, 0.24),
    ],
    germination: [
      federalMethod('vegetable', 'Pepper', {
        substrata: ['TB', 'RB', 'T'],
        temperatures: '20-30',
        firstCountDays: 6,
        finalCountDays: 14,
        preTreatment: 'Fresh or dormant seed: light and 0.2 % potassium nitrate.',
      }),
    ],
  },
  {
    name: 'Aubergine',
    scientificName: 'Solanum melongena',
    family: 'Solanaceae',
    pollination: 'mostly self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'true potato seed, the same family, would give about half a year at 20 C and 50 % humidity, far below its ordinary storage life; cotton is a dicot seed of about the same oil content and agrees with it',
    facts: [
      guideIsolation('Eggplant', '50 ft', 'common practice'),
      guidePlants('Eggplant', '10', 'common practice'),
      federalGermination('Eggplant', 60),
      seedsPerGram('Eggplant', '230'),
      storageLife('Eggplant', { A: '4', B: '5', D: '4', E: '6' }),
      oilFraction(0.16, 0.24),
    ],
    germination: [
      federalMethod('vegetable', 'Eggplant', {
        substrata: ['P', 'TB', 'RB', 'T'],
        temperatures: '20-30',
        firstCountDays: 7,
        finalCountDays: 14,
        light: true,
        preTreatment: 'Moisten the substratum with 0.2 % potassium nitrate.',
      }),
    ],
  },
  {
    name: 'Tomatillo',
    scientificName: 'Physalis philadelphica',
    family: 'Solanaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'true potato seed, the same family, would give about half a year at 20 C and 50 % humidity, far below its ordinary storage life; cotton is a dicot seed of about the same oil content and agrees with it',
    facts: [
      guideIsolation('Tomatillo', '1/2 mi', 'from memory'),
      guidePlants('Tomatillo', '20', 'from memory'),
      federalGermination('Tomato, husk', 50),
      seedsPerGram('Tomato, husk', '1240'),
      recalled('storage life', 3, 5, 'as for tomato, the same group'),
      oilFraction(0.16, 0.24),
    ],
    germination: [
      federalMethod('vegetable', 'Tomato, husk', {
        substrata: ['P', 'TB'],
        temperatures: '20-30',
        firstCountDays: 7,
        finalCountDays: 28,
        light: true,
        preTreatment: 'Moisten the substratum with 0.2 % potassium nitrate.',
      }),
    ],
  },
  {
    name: 'Potato (true seed)',
    scientificName: 'Solanum tuberosum',
    family: 'Solanaceae',
    pollination: 'mostly self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'potato',
    constantsBorrowed: false,
    borrowedBecause: null,
    facts: [
      recalled('isolation distance', 10, 60.96, 'mostly self-pollinated; bumblebees cross it'),
      recalled('minimum plants', 20, 50, 'a seedling population, not a clone'),
      recalled('minimum germination', 0.7, 0.7, "no legal standard recalled; a modest expectation, set the bank's own"),
      recalled('seeds per gram', 1200, 2000, 'thousand-seed weight about 0.5-0.8 g'),
      recalled('storage life', 3, 10, 'true seed is known as a long keeper'),
      oilFraction(0.16, 0.24),
    ],
    germination: [
      recalledMethod('international testing practice, not checked', {
        substrata: ['TB'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 14,
        preTreatment: 'Fresh or dormant seed: 0.2 % potassium nitrate.',
      }),
    ],
  },
];
