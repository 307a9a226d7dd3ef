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

/** Carrot, parsnip, celery and the seed spices. */
export const UMBELLIFERS: readonly CropFacts[] = [
  {
    name: 'Carrot',
    scientificName: 'Daucus carota',
    family: 'Apiaceae',
    pollination: 'insect',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'onion',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the carrot family is published; onion is a similarly short-lived vegetable seed of about the same oil content, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Carrot (distance, plants)', '1/2 mi', 'from memory'),
      guidePlants('Carrot (distance, plants)', '80-200', 'from memory'),
      federalGermination('Carrot', 55),
      seedsPerGram('Carrot', '825'),
      storageLife('Carrot', { A: '3', B: '1', C: '3', D: '3' }),
      oilFraction(0.16, 0.24),
    ],
    germination: [
      federalMethod('vegetable', 'Carrot', {
        substrata: ['B', 'T'],
        temperatures: '20-30',
        firstCountDays: 6,
        finalCountDays: 14,
      }),
    ],
  },
  {
    name: 'Parsnip',
    scientificName: 'Pastinaca sativa',
    family: 'Apiaceae',
    pollination: 'insect',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'onion',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the carrot family is published; onion is a similarly short-lived vegetable seed of about the same oil content, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Parsnip', '1/2 mi', 'from memory'),
      guidePlants('Parsnip', '50-80', 'from memory'),
      federalGermination('Parsnip', 60),
      seedsPerGram('Parsnip', '430'),
      storageLife('Parsnip', { A: '1', B: '1', C: '1' }),
      oilFraction(0.14, 0.22),
    ],
    germination: [
      federalMethod('vegetable', 'Parsnip', {
        substrata: ['B', 'T', 'TS'],
        temperatures: '20-30',
        firstCountDays: 6,
        finalCountDays: 28,
      }),
    ],
  },
  {
    name: 'Parsley',
    scientificName: 'Petroselinum crispum',
    family: 'Apiaceae',
    pollination: 'insect',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'onion',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the carrot family is published; onion is a similarly short-lived vegetable seed of about the same oil content, and agrees with its ordinary storage life',
    facts: [
      recalled('isolation distance', 804.67, 1609.34, 'insect-crossed; half a mile to a mile'),
      recalled('minimum plants', 25, 50, 'as for dill, the same group'),
      federalGermination('Parsley', 60),
      seedsPerGram('Parsley', '650'),
      storageLife('Parsley', { A: '2', B: '1', C: '2', D: '1-2' }),
      oilFraction(0.16, 0.24),
    ],
    germination: [
      federalMethod('vegetable', 'Parsley', {
        substrata: ['B', 'T', 'TS'],
        temperatures: '20-30',
        firstCountDays: 11,
        finalCountDays: 28,
      }),
    ],
  },
  {
    name: 'Celery',
    scientificName: 'Apium graveolens var. dulce',
    family: 'Apiaceae',
    pollination: 'insect',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'onion',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the carrot family is published; onion is a similarly short-lived vegetable seed of about the same oil content, and agrees with its ordinary storage life',
    facts: [
      recalled('isolation distance', 804.67, 1609.34, 'insect-crossed; half a mile to a mile; crosses with celeriac'),
      recalled('minimum plants', 25, 50, 'as for dill, the same group'),
      federalGermination('Celery', 55),
      seedsPerGram('Celery', '2520'),
      storageLife('Celery', { A: '3', B: '2', D: '3' }),
      oilFraction(0.18, 0.26),
    ],
    germination: [
      federalMethod('vegetable', 'Celery', {
        substrata: ['P'],
        temperatures: '15-25; 20',
        firstCountDays: 10,
        finalCountDays: 21,
        light: true,
        preTreatment: 'If the paper injures the roots, retest on soil or on a substratum moistened with water.',
      }),
    ],
  },
  {
    name: 'Celeriac',
    scientificName: 'Apium graveolens var. rapaceum',
    family: 'Apiaceae',
    pollination: 'insect',
    lifeCycle: 'biennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'onion',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the carrot family is published; onion is a similarly short-lived vegetable seed of about the same oil content, and agrees with its ordinary storage life',
    facts: [
      recalled('isolation distance', 804.67, 1609.34, 'insect-crossed; half a mile to a mile; crosses with celery'),
      recalled('minimum plants', 25, 50, 'as for dill, the same group'),
      federalGermination('Celeriac', 55),
      seedsPerGram('Celeriac', '2520'),
      recalled('storage life', 2, 3, 'as for celery, the same species'),
      oilFraction(0.18, 0.26),
    ],
    germination: [
      federalMethod('vegetable', 'Celeriac', {
        substrata: ['P'],
        temperatures: '5-25; 20',
        readTemperaturesAs: '15-25; 20',
        firstCountDays: 10,
        finalCountDays: 21,
        light: true,
        preTreatment:
          'If the paper injures the roots, retest on soil or on a substratum moistened with water. Printed 5-25; celery is 15-25, so this is probably a slip and is read as 15-25.',
      }),
    ],
  },
  {
    name: 'Dill',
    scientificName: 'Anethum graveolens',
    family: 'Apiaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'onion',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the carrot family is published; onion is a similarly short-lived vegetable seed of about the same oil content, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Dill', '1/2 mi', 'from memory'),
      guidePlants('Dill', '25-50', 'from memory'),
      federalGermination('Dill', 60),
      seedsPerGram('Dill', '800'),
      recalled('storage life', 2, 4, 'herb seed of this family'),
      oilFraction(0.14, 0.21),
    ],
    germination: [
      federalMethod('vegetable', 'Dill', {
        substrata: ['B', 'T'],
        temperatures: '20-30',
        firstCountDays: 7,
        finalCountDays: 21,
      }),
    ],
  },
  {
    name: 'Coriander',
    scientificName: 'Coriandrum sativum',
    family: 'Apiaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'onion',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the carrot family is published; onion is a similarly short-lived vegetable seed of about the same oil content, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Coriander', '1/2 mi', 'from memory'),
      guidePlants('Coriander', '25-50', 'from memory'),
      recalled(
        'minimum germination',
        0.65,
        0.65,
        "no legal standard recalled; a modest expectation, set the bank's own",
      ),
      recalled('seeds per gram', 70, 110, 'thousand-fruit weight about 9-14 g'),
      storageLife('Cilantro', { A: '2' }),
      oilFraction(0.14, 0.22),
    ],
    germination: [
      recalledMethod('international testing practice, not checked', {
        substrata: ['TB', 'B'],
        temperatures: '20-30; 20',
        firstCountDays: 7,
        finalCountDays: 21,
        preTreatment: 'Rub the round fruit into its two seeds, or count a fruit as one.',
      }),
    ],
  },
  {
    name: 'Fennel',
    scientificName: 'Foeniculum vulgare',
    family: 'Apiaceae',
    pollination: 'insect',
    lifeCycle: 'perennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'onion',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the carrot family is published; onion is a similarly short-lived vegetable seed of about the same oil content, and agrees with its ordinary storage life',
    facts: [
      guideIsolation('Fennel', '1/2 mi', 'from memory'),
      guidePlants('Fennel', '25-50', 'from memory'),
      recalled('minimum germination', 0.7, 0.7, 'EU vegetable seed directive 2002/55/EC, not checked'),
      recalled('seeds per gram', 140, 250, 'thousand-fruit weight about 4-7 g'),
      storageLife('Fennel', { A: '3' }),
      oilFraction(0.15, 0.22),
    ],
    germination: [
      recalledMethod('international testing practice, not checked', {
        substrata: ['TB', 'B', 'TS'],
        temperatures: '20-30',
        firstCountDays: 7,
        finalCountDays: 14,
      }),
    ],
  },
];
