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

/** Cucumber, melons, squashes and gourds. */
export const CUCURBITS: readonly CropFacts[] = [
  {
    name: 'Cucumber',
    scientificName: 'Cucumis sativus',
    family: 'Cucurbitaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the gourd family is published; cotton is an oily, long-keeping dicot seed, and stays within three times its ordinary storage life, though on the long side',
    facts: [
      guideIsolation('Cucumber', '1/2 mi', 'common practice'),
      guidePlants('Cucumber', '10', 'common practice'),
      federalGermination('Cucumber', 80),
      seedsPerGram('Cucumber', '40'),
      storageLife('Cucumber', { A: '5', B: '5', C: '3', D: '5', E: '8' }),
      oilFraction(0.32, 0.4),
    ],
    germination: [
      federalMethod('vegetable', 'Cucumber', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 7,
        preTreatment: 'Keep the substratum on the dry side: press it against dry paper before sowing and keep it so.',
      }),
    ],
  },
  {
    name: 'Melon',
    scientificName: 'Cucumis melo',
    family: 'Cucurbitaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the gourd family is published; cotton is an oily, long-keeping dicot seed, and stays within three times its ordinary storage life, though on the long side',
    facts: [
      guideIsolation('Melon', '1/2 mi', 'common practice'),
      guidePlants('Melon', '10', 'common practice'),
      federalGermination('Melon', 75),
      seedsPerGram('Melon', '45'),
      storageLife('Muskmelon', { A: '5', B: '5', C: '3', D: '5', E: '7' }),
      oilFraction(0.29, 0.37),
    ],
    germination: [
      federalMethod('vegetable', 'Melon', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20-30',
        firstCountDays: 4,
        finalCountDays: 10,
        preTreatment: 'Keep the substratum on the dry side: press it against dry paper before sowing and keep it so.',
      }),
    ],
  },
  {
    name: 'Watermelon',
    scientificName: 'Citrullus lanatus',
    family: 'Cucurbitaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the gourd family is published; cotton is an oily, long-keeping dicot seed, and stays within three times its ordinary storage life, though on the long side',
    facts: [
      federalIsolation(
        'Watermelon',
        { foundation: 2640, registered: 2640, certified: 1320 },
        'may be reduced by 50 % with adequate barriers',
      ),
      guideIsolation('Watermelon', '1/2 mi', 'from memory'),
      guidePlants('Watermelon', '10-25', 'from memory'),
      federalGermination('Watermelon', 70),
      seedsPerGram('Watermelon', '11'),
      storageLife('Watermelon', { A: '4', B: '5' }),
      oilFraction(0.22, 0.34),
    ],
    germination: [
      federalMethod('vegetable', 'Watermelon', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20-30; 25',
        firstCountDays: 4,
        finalCountDays: 14,
        preTreatment:
          'Keep the substratum on the dry side: press it against dry paper before sowing and keep it so. Fresh or dormant seed: test at 30 C.',
      }),
    ],
  },
  {
    name: 'Squash',
    scientificName: 'Cucurbita maxima and C. moschata',
    family: 'Cucurbitaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the gourd family is published; cotton is an oily, long-keeping dicot seed, and stays within three times its ordinary storage life, though on the long side',
    facts: [
      guideIsolation('Squash', '1/2 mi', 'common practice'),
      guidePlants('Squash', '10', 'common practice'),
      federalGermination('Squash', 75),
      seedsPerGram('Squash', '14'),
      storageLife('Squash', { A: '4', B: '3', C: '3-4', D: '4', E: '7' }),
      oilFraction(0.3, 0.4),
    ],
    germination: [
      federalMethod('vegetable', 'Squash', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20-30',
        firstCountDays: 4,
        finalCountDays: 7,
        preTreatment: 'Keep the substratum on the dry side: press it against dry paper before sowing and keep it so.',
      }),
    ],
  },
  {
    name: 'Pumpkin',
    scientificName: 'Cucurbita pepo',
    family: 'Cucurbitaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the gourd family is published; cotton is an oily, long-keeping dicot seed, and stays within three times its ordinary storage life, though on the long side',
    facts: [
      guideIsolation('Pumpkin', '1/2 mi', 'common practice'),
      guidePlants('Pumpkin', '10', 'common practice'),
      federalGermination('Pumpkin', 75),
      seedsPerGram('Pumpkin', '5'),
      storageLife('Pumpkin', { D: '4', E: '7' }),
      oilFraction(0.32, 0.42),
    ],
    germination: [
      federalMethod('vegetable', 'Pumpkin', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20-30',
        firstCountDays: 4,
        finalCountDays: 7,
        preTreatment: 'Keep the substratum on the dry side: press it against dry paper before sowing and keep it so.',
      }),
    ],
  },
  {
    name: 'Bottle gourd',
    scientificName: 'Lagenaria siceraria',
    family: 'Cucurbitaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the gourd family is published; cotton is an oily, long-keeping dicot seed, and stays within three times its ordinary storage life, though on the long side',
    facts: [
      guideIsolation('Gourd, bottle', '1/2 mi', 'from memory'),
      guidePlants('Gourd, bottle', '10-25', 'from memory'),
      recalled('minimum germination', 0.75, 0.75, 'as for squash, the same group'),
      recalled('seeds per gram', 5, 8, 'thousand-seed weight about 130-200 g'),
      recalled('storage life', 4, 6, 'as for squash, the same group'),
      oilFraction(0.28, 0.38),
    ],
    germination: [
      recalledMethod('international testing practice, not checked', {
        substrata: ['B', 'S'],
        temperatures: '20-30',
        firstCountDays: 4,
        finalCountDays: 14,
        preTreatment: 'Keep the substratum on the dry side.',
      }),
    ],
  },
];
