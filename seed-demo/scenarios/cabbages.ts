/** Kale, the crop that every croft kept, and the cabbages. */
import { IN_FRIDGE_BOX, IN_LOFT_ENVELOPE, IN_PANTRY_ENVELOPE, inFreezer, inFridgeTube, inPantryJar } from './places';
import type { AccessionStory } from './story';

export const CABBAGE_STORIES: readonly AccessionStory[] = [
  {
    crop: 'Kale',
    name: 'Northbie Tall',
    donor: 'the school garden at Northbie',
    origin: 'Northbie',
    kept: inFreezer(4.6),
    lots: [
      {
        season: 14,
        kept: inPantryJar(6.4),
        initial: 0.96,
        rate: 0.9,
        tested: [13, 9, 4],
        moved: [{ season: 11, on: '03-22', ...inFreezer(4.7) }],
      },
      { season: 9, initial: 0.97, rate: 1, tested: [8, 3], duplicated: { season: 7, seeds: 1000 } },
      { season: 4, viaCupboard: true, initial: 0.97, tested: [3], duplicated: { season: 3, seeds: 1000 } },
      { season: 0, viaCupboard: true, initial: 0.98, notes: 'First seed from the new cage.' },
    ],
  },
  {
    crop: 'Kale',
    name: 'Wind-cut',
    donor: 'a crofter at Ramsgarth',
    origin: 'Ramsgarth, the field that gets the spray',
    kept: inFridgeTube(5.2),
    lots: [
      { season: 10, initial: 0.94, rate: 1.3, tested: [9, 5, 2] },
      { season: 5, initial: 0.96, tested: [4, 1] },
      { season: 1, viaCupboard: true, initial: 0.97, tested: [0], duplicated: { season: 0, seeds: 800 } },
    ],
  },
  {
    crop: 'Kale',
    name: 'Schoolhouse',
    donor: 'the school garden at Northbie',
    kept: IN_LOFT_ENVELOPE,
    lots: [
      {
        season: 11,
        initial: 0.93,
        rate: 1.2,
        tested: [9, 5, 1],
        moved: [{ season: 4, on: '10-06', ...inFreezer(5.6) }],
      },
      { season: 6, initial: 0.95, rate: 1, tested: [5, 2], moved: [{ season: 4, on: '10-06', ...inFreezer(5.6) }] },
    ],
  },
  {
    crop: 'Kale',
    name: 'Ebb Shore',
    donor: 'the shore watch',
    origin: 'The allotments above the ebb',
    notes: 'Asked for at every seed swap; there is little left.',
    kept: inFridgeTube(5),
    lots: [
      {
        season: 8,
        seeds: 390,
        initial: 0.94,
        rate: 1.2,
        tested: [7],
        shared: [{ season: 5, on: '02-11', seeds: 150, note: 'Seed swap in the hall' }],
      },
      {
        season: 3,
        seeds: 700,
        plants: 22,
        initial: 0.96,
        tested: [2],
        shared: [
          { season: 1, on: '02-08', seeds: 250, note: 'Seed swap in the hall' },
          { season: 0, on: '02-09', seeds: 190, note: 'The growers’ circle' },
        ],
      },
    ],
  },
  {
    crop: 'Cabbage',
    name: 'Hallow Ness Ball',
    donor: 'the keeper of the Hallow Ness light',
    origin: 'Hallow Ness',
    kept: inFreezer(4.9),
    lots: [
      {
        season: 12,
        kept: inPantryJar(6.5),
        initial: 0.94,
        rate: 1.1,
        tested: [11, 6, 1],
        moved: [{ season: 11, on: '03-22', ...inFreezer(4.9) }],
      },
      { season: 6, viaCupboard: true, initial: 0.96, tested: [5, 1], duplicated: { season: 5, seeds: 800 } },
      { season: 1, viaCupboard: true, initial: 0.96, tested: [0] },
    ],
  },
  {
    crop: 'Cabbage',
    name: "Keeper's Red",
    donor: 'the keeper of the Hallow Ness light',
    kept: IN_PANTRY_ENVELOPE,
    lots: [
      { season: 9, initial: 0.92, rate: 1.2, tested: [8, 5] },
      { season: 4, initial: 0.95, rate: 0.6, tested: [3, 1] },
    ],
  },
  {
    crop: 'Cabbage',
    name: 'Lambing',
    donor: 'a crofter at Sandwater',
    origin: 'Fed to ewes at lambing; nobody ate it until the hungry year',
    kept: IN_FRIDGE_BOX,
    lots: [
      { season: 7, initial: 0.93, rate: 1, tested: [6, 2] },
      { season: 3, initial: 0.95, rate: 1, tested: [2] },
    ],
  },
];
