import type { CropFacts } from '../crop-facts';
import { federalGermination, federalIsolation, ORTHODOX, oilFraction, recalled, seedsPerGram } from '../fact-builders';
import { federalMethod } from '../germination-builders';

/** Buckwheat, rhubarb and sorrel. */
export const DOCKS_AND_BUCKWHEAT: readonly CropFacts[] = [
  {
    name: 'Buckwheat',
    scientificName: 'Fagopyrum esculentum',
    family: 'Polygonaceae',
    pollination: 'insect',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'sugar-beet',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in its family is published; sugar beet is the same order (Caryophyllales), and agrees with its ordinary storage life',
    facts: [
      federalIsolation('Buckwheat', { foundation: 660, registered: 660, certified: 660 }),
      recalled('minimum plants', 50, 100, 'self-incompatible and insect-crossed'),
      recalled(
        'minimum germination',
        0.75,
        0.85,
        "no legal standard recalled; a modest expectation, set the bank's own",
      ),
      seedsPerGram('Buckwheat', '45'),
      recalled('storage life', 2, 4, 'dry grain in a cool room'),
      oilFraction(0.02, 0.03),
    ],
    germination: [
      federalMethod('agricultural', 'Buckwheat', {
        substrata: ['B', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 6,
      }),
    ],
  },
  {
    name: 'Rhubarb',
    scientificName: 'Rheum x hybridum',
    family: 'Polygonaceae',
    pollination: 'wind',
    lifeCycle: 'perennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'sugar-beet',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in its family is published; sugar beet is the same order (Caryophyllales), and agrees with its ordinary storage life',
    facts: [
      recalled('isolation distance', 402.34, 1609.34, 'wind-crossed perennial; a quarter mile to a mile'),
      recalled('minimum plants', 10, 25, 'large long-lived plants; usually kept as a clone'),
      federalGermination('Rhubarb', 60),
      seedsPerGram('Rhubarb', '60'),
      recalled('storage life', 1, 3, 'winged fruit, a short keeper'),
      oilFraction(0.03, 0.07),
    ],
    germination: [
      federalMethod('vegetable', 'Rhubarb', {
        substrata: ['TB', 'TS'],
        temperatures: '20-30',
        firstCountDays: 7,
        finalCountDays: 21,
        light: true,
      }),
    ],
  },
  {
    name: 'Sorrel',
    scientificName: 'Rumex acetosa',
    family: 'Polygonaceae',
    pollination: 'wind',
    lifeCycle: 'perennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'sugar-beet',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in its family is published; sugar beet is the same order (Caryophyllales), and agrees with its ordinary storage life',
    facts: [
      recalled('isolation distance', 402.34, 1609.34, 'wind-crossed, sexes on separate plants'),
      recalled('minimum plants', 25, 50, 'sexes on separate plants, so twice the usual small number'),
      federalGermination('Sorrel', 65),
      seedsPerGram('Sorrel', '1080'),
      recalled('storage life', 2, 4, 'smooth hard fruit'),
      oilFraction(0.03, 0.07),
    ],
    germination: [
      federalMethod('vegetable', 'Sorrel', {
        substrata: ['P', 'TB', 'TS'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 14,
        light: true,
        preTreatment: 'Fresh or dormant seed: test at 15 C.',
      }),
    ],
  },
];
