import type { CropFacts } from '../crop-facts';
import { federalIsolation, ORTHODOX, oilFraction, recalled, seedsPerGram } from '../fact-builders';
import { federalMethod } from '../germination-builders';

/** Clovers and alfalfa: small hard-coated seed. */
export const FORAGE_LEGUMES: readonly CropFacts[] = [
  {
    name: 'Red clover',
    scientificName: 'Trifolium pratense',
    family: 'Fabaceae',
    pollination: 'insect',
    lifeCycle: 'perennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'chickpea',
    constantsBorrowed: true,
    borrowedBecause: 'chickpea is the same family (Fabaceae); no clover or medick constants are published',
    facts: [
      federalIsolation(
        'Clover, all kinds',
        { foundation: 600, registered: 300, certified: 165 },
        'fields of 5 acres or larger; smaller fields 900/450 ft Foundation/Registered',
      ),
      recalled('minimum plants', 100, 200, 'self-incompatible and insect-crossed'),
      recalled('minimum germination', 0.8, 0.8, 'EU fodder plant seed directive 66/401/EEC, not checked'),
      seedsPerGram('Clover, red', '600'),
      recalled('storage life', 2, 4, 'small hard seed in a cool room'),
      oilFraction(0.05, 0.09),
    ],
    germination: [
      federalMethod('agricultural', 'Clover, red', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20',
        firstCountDays: 4,
        finalCountDays: 7,
        preTreatment: 'A temperature of 18 C is desirable. Fresh or dormant seed: test at 15 C.',
        hardSeedOccurs: true,
      }),
    ],
  },
  {
    name: 'White clover',
    scientificName: 'Trifolium repens',
    family: 'Fabaceae',
    pollination: 'insect',
    lifeCycle: 'perennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'chickpea',
    constantsBorrowed: true,
    borrowedBecause: 'chickpea is the same family (Fabaceae); no clover or medick constants are published',
    facts: [
      federalIsolation(
        'Clover, all kinds',
        { foundation: 600, registered: 300, certified: 165 },
        'fields of 5 acres or larger; smaller fields 900/450 ft Foundation/Registered',
      ),
      recalled('minimum plants', 100, 200, 'self-incompatible and insect-crossed'),
      recalled('minimum germination', 0.8, 0.8, 'EU fodder plant seed directive 66/401/EEC, not checked'),
      seedsPerGram('Clover, white', '1500'),
      recalled('storage life', 2, 5, 'small hard seed in a cool room'),
      oilFraction(0.05, 0.09),
    ],
    germination: [
      federalMethod('agricultural', 'Clover, white', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20',
        firstCountDays: 3,
        finalCountDays: 7,
        preTreatment: 'A temperature of 18 C is desirable. Fresh or dormant seed: test at 15 C.',
        hardSeedOccurs: true,
      }),
    ],
  },
  {
    name: 'Alfalfa',
    scientificName: 'Medicago sativa',
    family: 'Fabaceae',
    pollination: 'insect',
    lifeCycle: 'perennial',
    storageBehaviour: ORTHODOX,
    longevityConstantsKey: 'chickpea',
    constantsBorrowed: true,
    borrowedBecause: 'chickpea is the same family (Fabaceae); no clover or medick constants are published',
    facts: [
      federalIsolation(
        'Alfalfa (non hybrid)',
        { foundation: 600, registered: 300, certified: 165 },
        'fields >5 acres; see notes 3,44,48',
      ),
      recalled('minimum plants', 100, 200, 'insect-crossed'),
      recalled('minimum germination', 0.8, 0.8, 'EU fodder plant seed directive 66/401/EEC, not checked'),
      seedsPerGram('Alfalfa', '500'),
      recalled('storage life', 3, 6, 'small hard seed in a cool room'),
      oilFraction(0.08, 0.12),
    ],
    germination: [
      federalMethod('agricultural', 'Alfalfa', {
        substrata: ['B', 'T', 'S'],
        temperatures: '20',
        firstCountDays: 4,
        finalCountDays: 7,
        preTreatment: 'A temperature of 18 C is desirable.',
        hardSeedOccurs: true,
      }),
    ],
  },
];
