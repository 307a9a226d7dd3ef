import type { CropFacts } from '../crop-facts';
import {
  federalGermination,
  guideIsolation,
  guidePlants,
  ORTHODOX,
  oilFraction,
  recalled,
  seedsPerGram,
  storageLife,
} from '../fact-builders';
import { federalMethod, recalledMethod } from '../germination-builders';

/** Basil, sage, corn salad and asparagus. */
export const HERBS_AND_ASPARAGUS: readonly CropFacts[] = [
  {
    name: 'Basil',
    scientificName: 'Ocimum basilicum',
    family: 'Lamiaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the mint family is published; cotton is a dicot seed of about the same oil content, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Basil', '150 ft-1/2 mi', 'from memory'),
      guidePlants('Basil', '25', 'from memory'),
      recalled(
        'minimum germination',
        0.65,
        0.65,
        "no legal standard recalled; a modest expectation, set the bank's own",
      ),
      recalled('seeds per gram', 600, 800, 'thousand-seed weight about 1.3-1.7 g'),
      storageLife('Basil', { A: '5' }),
      oilFraction(0.18, 0.26),
    ],
    germination: [
      recalledMethod('international testing practice, not checked', {
        substrata: ['TB'],
        temperatures: '20-30',
        firstCountDays: 4,
        finalCountDays: 14,
      }),
    ],
  },
  {
    name: 'Sage',
    scientificName: 'Salvia officinalis',
    family: 'Lamiaceae',
    pollination: 'insect',
    lifeCycle: 'perennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the mint family is published; cotton is a dicot seed of about the same oil content, and agrees with its ordinary storage life',
    facts: [
      recalled('isolation distance', 402.34, 804.67, 'insect-crossed; a quarter to half a mile'),
      recalled('minimum plants', 10, 25, 'a perennial shrub'),
      federalGermination('Sage', 60),
      seedsPerGram('Sage', '120'),
      storageLife('Sage', { A: '4' }),
      oilFraction(0.16, 0.24),
    ],
    germination: [
      federalMethod('vegetable', 'Sage', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20-30',
        firstCountDays: 5,
        finalCountDays: 14,
      }),
    ],
  },
  {
    name: 'Asparagus',
    scientificName: 'Asparagus officinalis',
    family: 'Asparagaceae',
    pollination: 'insect',
    lifeCycle: 'perennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'onion',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in its family is published; onion is the same order (Asparagales), and agrees with its ordinary storage life',
    facts: [
      recalled(
        'isolation distance',
        804.67,
        3218.69,
        'bee-crossed, sexes on separate plants; half a mile to two miles',
      ),
      recalled('minimum plants', 20, 50, 'sexes on separate plants'),
      federalGermination('Asparagus', 70),
      seedsPerGram('Asparagus', '25'),
      storageLife('Asparagus', { A: '3', B: '2', D: '3' }),
      oilFraction(0.12, 0.18),
    ],
    germination: [
      federalMethod('vegetable', 'Asparagus', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20-30',
        firstCountDays: 7,
        finalCountDays: 21,
      }),
    ],
  },
  {
    name: 'Corn salad',
    scientificName: 'Valerianella locusta',
    family: 'Caprifoliaceae',
    pollination: 'mostly self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'cotton',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in its family is published; cotton is a dicot seed with storage oil, and agrees with its ordinary storage life',
    facts: [
      recalled('isolation distance', 10, 100, 'mostly self-pollinated'),
      recalled('minimum plants', 25, 50, 'mostly self-pollinated'),
      federalGermination('Cornsalad', 70),
      seedsPerGram('Cornsalad (other vars)', '380'),
      recalled('storage life', 4, 5, 'known as a long keeper'),
      oilFraction(0.25, 0.35),
    ],
    germination: [
      federalMethod('vegetable', 'Cornsalad', {
        substrata: ['B', 'T'],
        temperatures: '15',
        firstCountDays: 7,
        finalCountDays: 28,
        preTreatment: 'Test at 10 C.',
      }),
    ],
  },
];
