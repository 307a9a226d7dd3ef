/** Beans, peas and clover: seed that may refuse water for years and still be alive. */
import { IN_LOFT_ENVELOPE, inFreezer, inFridgeTube, inPantryJar } from './places';
import type { AccessionStory } from './story';

export const LEGUME_STORIES: readonly AccessionStory[] = [
  {
    crop: 'Broad bean',
    name: 'Lighthouse',
    donor: 'the keeper of the Hallow Ness light',
    origin: 'Hallow Ness, said to have come with the first keeper',
    kept: inPantryJar(10.4),
    lots: [
      { season: 12, seeds: 520, initial: 0.95, rate: 0.9, tested: [11, 7, 3] },
      { season: 8, initial: 0.97, tested: [7, 3], duplicated: { season: 6, seeds: 120 } },
      { season: 4, initial: 0.97, tested: [3] },
      { season: 1, initial: 0.98, tested: [0], duplicated: { season: 0, seeds: 120 } },
    ],
  },
  {
    crop: 'Broad bean',
    name: 'Small Brown',
    donor: 'a crofter at Sandwater',
    notes: 'The middle lot was jarred too moist. Dry it, or grow it soon.',
    kept: inPantryJar(10.8),
    lots: [
      { season: 9, initial: 0.94, rate: 1.1, tested: [8, 4] },
      { season: 5, kept: inPantryJar(15.8), seeds: 640, initial: 0.96, yearsPerProbit: 2.6, tested: [4, 2] },
      { season: 2, initial: 0.97, grownFrom: 0, tested: [1] },
    ],
  },
  {
    crop: 'Pea',
    name: 'Ramsgarth Grey',
    donor: 'the mill at Ramsgarth',
    origin: 'Ramsgarth, milled with barley in bad years',
    kept: inPantryJar(9.8),
    lots: [
      { season: 13, initial: 0.95, rate: 1, tested: [12, 8, 4] },
      { season: 9, initial: 0.97, tested: [8, 4, 1], duplicated: { season: 7, seeds: 250 } },
      { season: 5, initial: 0.97, tested: [4, 1] },
      {
        season: 2,
        initial: 0.98,
        tested: [1],
        shared: [{ season: 0, on: '02-09', seeds: 300, note: 'Seed swap in the hall' }],
      },
    ],
  },
  {
    crop: 'Pea',
    name: "Net-mender's",
    donor: 'the net loft',
    notes: 'Kept where it was grown: in the boathouse, in paper, in all weathers.',
    kept: IN_LOFT_ENVELOPE,
    lots: [
      { season: 6, initial: 0.95, yearsPerProbit: 3, tested: [5, 2] },
      { season: 3, initial: 0.96, yearsPerProbit: 3, tested: [2] },
    ],
  },
  {
    crop: 'Pea',
    name: 'Northbie Sweet',
    donor: 'the school garden at Northbie',
    kept: inFreezer(7.4),
    lots: [
      { season: 7, initial: 0.96, tested: [6, 2], duplicated: { season: 6, seeds: 150 } },
      { season: 3, viaCupboard: true, initial: 0.98, tested: [2] },
    ],
  },
  {
    crop: 'Red clover',
    name: 'Hallow Ness',
    donor: 'the grazing committee',
    origin: 'The machair below the light',
    notes: 'Up to a fifth of it is hard seed: alive, but it sleeps through the count.',
    kept: inFridgeTube(6.2),
    lots: [
      { season: 10, initial: 0.94, rate: 0.9, tested: [9, 6, 3] },
      { season: 6, initial: 0.95, tested: [5, 2], duplicated: { season: 5, seeds: 1000 } },
      {
        season: 2,
        viaCupboard: true,
        initial: 0.96,
        tested: [{ season: 1, dishes: [4, 100], notes: 'Hard seed chipped and set again: all but two came.' }],
      },
    ],
  },
  {
    crop: 'Red clover',
    name: 'Lang Field',
    donor: 'a crofter at Long Ayre',
    kept: { store: 'clover-box', container: 'metal-tin', moisturePercent: 8.6 },
    lots: [
      { season: 11, initial: 0.92, rate: 1.2, tested: [10, 5] },
      { season: 5, initial: 0.94, rate: 1.1, tested: [4] },
      { season: 1, kept: inFridgeTube(6.4), viaCupboard: true, initial: 0.95, tested: [0] },
    ],
  },
];
