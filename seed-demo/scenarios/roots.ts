/** Short-lived umbellifers, turnips and beet. */
import { IN_FRIDGE_BOX, IN_LOFT_ENVELOPE, IN_PANTRY_ENVELOPE, inFreezer, inFridgeTube, inPantryJar } from './places';
import type { AccessionStory } from './story';

export const ROOT_STORIES: readonly AccessionStory[] = [
  {
    crop: 'Parsnip',
    name: 'Hallow Ness Long',
    donor: 'the keeper of the Hallow Ness light',
    origin: 'Hallow Ness, deep sand behind the light',
    kept: inFridgeTube(6.4),
    lots: [
      { season: 9, initial: 0.85, rate: 1.9, tested: [8, 5, 2] },
      { season: 6, initial: 0.88, rate: 1.8, tested: [5, 2] },
      { season: 2, viaCupboard: true, initial: 0.87, rate: 1.7, tested: [1], duplicated: { season: 1, seeds: 500 } },
      { season: 0, viaCupboard: true, initial: 0.88, plants: 34 },
    ],
  },
  {
    crop: 'Parsnip',
    name: 'Ramsgarth',
    donor: 'a crofter at Ramsgarth',
    origin: 'Ramsgarth',
    kept: IN_PANTRY_ENVELOPE,
    lots: [
      { season: 7, initial: 0.84, rate: 1.4, tested: [6, 4] },
      { season: 4, initial: 0.86, rate: 1.5, tested: [3, 1] },
      { season: 1, initial: 0.87, rate: 1.4, tested: [0] },
    ],
    decisions: [
      {
        seasonsBeforeComing: 0,
        action: 'regrow',
        lot: 2,
        reason: 'It does not last in the pantry. Grow it once more and put the new seed into the freezer.',
      },
    ],
  },
  {
    crop: 'Carrot',
    name: 'Sandwater Amber',
    donor: 'the two sisters at the Sandwater croft',
    origin: 'Sandwater',
    kept: inFreezer(5.4),
    lots: [
      {
        season: 11,
        kept: inFridgeTube(6.8),
        initial: 0.88,
        rate: 1.2,
        tested: [10, 6, 2],
        moved: [{ season: 8, on: '11-02', ...inFreezer(6.8) }],
      },
      { season: 6, viaCupboard: true, initial: 0.9, tested: [5, 1], duplicated: { season: 5, seeds: 1000 } },
      {
        season: 2,
        viaCupboard: true,
        initial: 0.91,
        tested: [1],
        shared: [{ season: 0, on: '02-09', seeds: 1500, note: 'Seed swap in the hall' }],
      },
    ],
  },
  {
    crop: 'Carrot',
    name: 'Ferry Purple',
    donor: 'the ferry crew',
    origin: 'Found in a crate on the ferry',
    notes: 'Two counts of the second lot do not agree. One of them was on paper that dried out over a weekend.',
    kept: inFridgeTube(6.6),
    lots: [
      { season: 7, initial: 0.86, rate: 1.3, tested: [6, 3] },
      {
        season: 4,
        initial: 0.88,
        rate: 1,
        tested: [
          { season: 3, dishes: [4, 50] },
          { season: 1, on: '01-22', dishes: [4, 50], shows: 0.86 },
          {
            season: 1,
            on: '02-12',
            dishes: [4, 50],
            shows: 0.55,
            notes: 'Paper dry on Monday morning. Counted all the same.',
          },
        ],
      },
    ],
  },
  {
    crop: 'Carrot',
    name: 'Old Manse White',
    donor: 'the manse garden',
    origin: 'Kirk Geo',
    kept: IN_LOFT_ENVELOPE,
    lots: [
      { season: 8, initial: 0.85, rate: 1, tested: [6, 3] },
      { season: 1, kept: inFreezer(5.5), viaCupboard: true, initial: 0.89, tested: [0], seeds: 5200 },
    ],
  },
  {
    crop: 'Turnip',
    name: 'Brannasay Grey-top',
    donor: 'the show society',
    origin: 'All over the island',
    kept: inFreezer(4.8),
    lots: [
      {
        season: 14,
        kept: inPantryJar(6.6),
        initial: 0.95,
        rate: 0.9,
        tested: [12, 8, 3],
        moved: [{ season: 11, on: '03-22', ...inFreezer(4.8) }],
      },
      { season: 9, initial: 0.96, tested: [8, 3], duplicated: { season: 7, seeds: 1000 } },
      { season: 3, viaCupboard: true, initial: 0.97, tested: [2], duplicated: { season: 2, seeds: 1000 } },
    ],
  },
  {
    crop: 'Turnip',
    name: 'Kirk Geo Yellow',
    donor: 'a crofter at Kirk Geo',
    origin: 'Kirk Geo',
    kept: inPantryJar(6.9),
    lots: [
      { season: 9, initial: 0.94, rate: 1.2, tested: [8, 5, 2] },
      {
        season: 4,
        initial: 0.95,
        rate: 1.1,
        tested: [
          3,
          { season: 0, firstWrittenWith: { normalTooMany: 6, reason: 'The first dish was read from the line above.' } },
        ],
        treatment: 'Dressed against flea beetle by the grower; not food, not feed',
        notes: 'Wash hands after handling.',
      },
    ],
  },
  {
    crop: 'Turnip',
    name: 'Post Office',
    donor: 'the post office garden',
    kept: IN_LOFT_ENVELOPE,
    lots: [
      { season: 10, initial: 0.93, rate: 1.1, tested: [8, 5, 2] },
      { season: 5, initial: 0.95, rate: 1, tested: [4, 1] },
    ],
  },
  {
    crop: 'Beet',
    name: 'Boathouse',
    donor: 'the boat builder',
    origin: 'The boathouse garden, always manured with weed from the shore',
    kept: inPantryJar(8.8),
    lots: [
      { season: 12, initial: 0.9, rate: 0.9, tested: [11, 7, 3] },
      { season: 7, initial: 0.92, tested: [6, 2] },
      { season: 2, initial: 0.91, viaCupboard: true, tested: [1], duplicated: { season: 1, seeds: 300 } },
      { season: 0, viaCupboard: true, initial: 0.92 },
    ],
  },
  {
    crop: 'Beet',
    name: 'Long Ayre Crimson',
    donor: 'a fisherman from Long Ayre',
    kept: IN_FRIDGE_BOX,
    lots: [
      { season: 6, initial: 0.89, rate: 0.9, tested: [5, 2] },
      { season: 1, kept: inFridgeTube(7.5), initial: 0.92, tested: [0] },
    ],
  },
];
