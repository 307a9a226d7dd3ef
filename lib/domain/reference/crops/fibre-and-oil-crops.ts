import type { CropFacts } from '../crop-facts';
import { federalIsolation, ORTHODOX, oilFraction, recalled, seedsPerGram } from '../fact-builders';
import { federalMethod } from '../germination-builders';

/** Flax and hemp. */
export const FIBRE_AND_OIL_CROPS: readonly CropFacts[] = [
  {
    name: 'Flax',
    scientificName: 'Linum usitatissimum',
    family: 'Linaceae',
    pollination: 'self',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the flax family is published; lettuce is a small seed of about the same oil content, and agrees with its ordinary storage life',
    facts: [
      federalIsolation(
        'Flax',
        { foundation: 0, registered: 0, certified: 0 },
        'distance adequate to prevent mechanical mixture',
      ),
      recalled('minimum plants', 20, 100, 'selfing field crop, as for wheat'),
      recalled(
        'minimum germination',
        0.85,
        0.92,
        'EU oil and fibre plant seed directive 2002/57/EC, not checked; linseed 0.85, fibre flax 0.92',
      ),
      seedsPerGram('Flax', '180'),
      recalled('storage life', 2, 5, 'dry seed in a cool room'),
      oilFraction(0.36, 0.44),
    ],
    germination: [
      federalMethod('agricultural', 'Flax', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 7,
      }),
    ],
  },
  {
    name: 'Hemp',
    scientificName: 'Cannabis sativa',
    family: 'Cannabaceae',
    pollination: 'wind',
    lifeCycle: 'annual',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'lettuce',
    constantsBorrowed: true,
    borrowedBecause:
      'nothing in the hemp family is published; lettuce is a seed of about the same oil content, and agrees with its ordinary storage life',
    facts: [
      recalled('isolation distance', 1000, 5000, 'wind-crossed, pollen travels far'),
      recalled('minimum plants', 100, 200, 'wind-crossed, sexes usually on separate plants'),
      recalled('minimum germination', 0.75, 0.75, 'EU oil and fibre plant seed directive 2002/57/EC, not checked'),
      seedsPerGram('Hemp', '45'),
      recalled('storage life', 1, 3, 'known as a short keeper'),
      oilFraction(0.28, 0.36),
    ],
    germination: [
      federalMethod('agricultural', 'Hemp', {
        substrata: ['B', 'T'],
        temperatures: '20-30',
        firstCountDays: 3,
        finalCountDays: 7,
      }),
    ],
  },
];
