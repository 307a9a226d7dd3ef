/** Barley in jars, slow and steady, and oats. */
import { IN_LOFT_ENVELOPE, IN_PANTRY_ENVELOPE, inFreezer, inPantryJar } from './places';
import type { AccessionStory } from './story';

export const CEREAL_STORIES: readonly AccessionStory[] = [
  {
    crop: 'Barley',
    name: 'Ramsgarth Six-row',
    donor: 'the mill at Ramsgarth',
    origin: 'Ramsgarth, from the mill’s own seed chest',
    notes: 'Grown every third year since the bank began; the longest row of jars in the pantry.',
    kept: inPantryJar(9.6),
    lots: [
      { season: 14, initial: 0.97, rate: 1, tested: [13, 10, 7, 4, 1] },
      { season: 12, initial: 0.98, rate: 1, tested: [11, 8, 5, 2] },
      { season: 9, initial: 0.97, rate: 0.9, tested: [8, 5, 1], duplicated: { season: 7, seeds: 1000 } },
      { season: 6, initial: 0.98, rate: 1.1, tested: [5, 2] },
      { season: 3, initial: 0.98, tested: [2], duplicated: { season: 2, seeds: 1000 } },
      { season: 0, initial: 0.98 },
    ],
  },
  {
    crop: 'Barley',
    name: 'Black Sandwater',
    donor: 'the two sisters at the Sandwater croft',
    origin: 'Sandwater',
    kept: inPantryJar(9.9),
    lots: [
      { season: 14, initial: 0.95, rate: 1.2, tested: [12, 8, 4] },
      { season: 10, initial: 0.97, tested: [9, 5, 1] },
      { season: 6, initial: 0.97, tested: [5, 1], duplicated: { season: 5, seeds: 800 } },
      { season: 2, initial: 0.98, tested: [1] },
    ],
  },
  {
    crop: 'Barley',
    name: 'Kirk Geo Early',
    donor: 'a crofter at Kirk Geo',
    kept: inPantryJar(10.2),
    lots: [
      { season: 11, initial: 0.95, rate: 1.1, tested: [10, 6, 2] },
      { season: 7, initial: 0.96, tested: [6, 2] },
      {
        season: 3,
        initial: 0.97,
        tested: [2],
        shared: [{ season: 1, on: '03-18', seeds: 1500, note: 'The baker’s field' }],
      },
      { season: 0, initial: 0.98 },
    ],
  },
  {
    crop: 'Barley',
    name: 'Hill Field',
    donor: 'the grazing committee',
    kept: { store: 'loft', container: 'cloth-bag' },
    lots: [
      { season: 6, initial: 0.96, rate: 1, tested: [5, 2], yearsPerProbit: 3.2 },
      { season: 1, kept: inPantryJar(9.8), initial: 0.97, tested: [0] },
    ],
  },
  {
    crop: 'Oat',
    name: 'Brannasay Black',
    donor: 'the show society',
    origin: 'All over the island; the straw thatched every roof',
    kept: inPantryJar(9.4),
    lots: [
      { season: 13, initial: 0.96, rate: 0.9, tested: [12, 8, 4] },
      { season: 9, initial: 0.97, tested: [8, 4, 1], duplicated: { season: 7, seeds: 1000 } },
      { season: 5, initial: 0.97, tested: [4, 1] },
      { season: 1, initial: 0.98, tested: [0], duplicated: { season: 0, seeds: 1000 } },
    ],
  },
  {
    crop: 'Oat',
    name: 'Small Sand',
    donor: 'a crofter at Long Ayre',
    origin: 'Long Ayre, on land too poor for anything else',
    notes: 'The second lot went into its jar straight from a wet harvest.',
    kept: inPantryJar(9.7),
    lots: [
      { season: 12, initial: 0.95, rate: 1.1, tested: [11, 7, 3] },
      {
        season: 8,
        kept: inPantryJar(16.4),
        initial: 0.95,
        yearsPerProbit: 2.1,
        tested: [7, 4],
        notes: 'Oven test after sealing: 16.4 %. Should have been dried first.',
      },
      { season: 4, initial: 0.97, tested: [3], grownFrom: 0 },
      { season: 1, initial: 0.97, tested: [0], duplicated: { season: 0, seeds: 1000 } },
    ],
  },
  {
    crop: 'Oat',
    name: "Ferryman's White",
    donor: 'the ferry crew',
    kept: inFreezer(7.2),
    lots: [
      { season: 7, initial: 0.96, tested: [6, 2] },
      { season: 3, viaCupboard: true, initial: 0.97, tested: [2], duplicated: { season: 2, seeds: 800 } },
      { season: 0, viaCupboard: true, initial: 0.97 },
    ],
  },
  {
    crop: 'Oat',
    name: 'Gable End',
    donor: 'the thatcher',
    kept: IN_PANTRY_ENVELOPE,
    lots: [
      { season: 10, initial: 0.94, rate: 1, tested: [9, 6, 2] },
      { season: 5, initial: 0.96, rate: 1, tested: [4, 1] },
      {
        season: 4,
        kept: IN_LOFT_ENVELOPE,
        seeds: 1200,
        initial: 0.94,
        rate: 1,
        yearsPerProbit: 3.5,
        tested: [2],
        grownFrom: 0,
        lost: { season: 1, on: '03-02', seeds: 380, note: 'Mice' },
      },
    ],
  },
];
