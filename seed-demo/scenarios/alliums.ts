/** Onions that were frozen in time, and leeks that were nearly lost with the fridge. */
import { IN_FRIDGE_BOX, IN_PANTRY_ENVELOPE, inFreezer, inPantryJar } from './places';
import type { AccessionStory } from './story';

export const ALLIUM_STORIES: readonly AccessionStory[] = [
  {
    crop: 'Onion',
    name: 'Sandwater Flat',
    donor: 'the two sisters at the Sandwater croft',
    origin: 'Sandwater, grown there for at least three generations',
    notes: 'Flat, pale, keeps until April. Every croft on the west side once had it.',
    kept: inFreezer(5.6),
    lots: [
      {
        season: 12,
        kept: inPantryJar(7.4),
        initial: 0.95,
        rate: 1.1,
        tested: [11, 7, 2],
        moved: [{ season: 11, on: '03-20', ...inFreezer(5.6) }],
        duplicated: { season: 6, seeds: 400 },
      },
      {
        season: 7,
        viaCupboard: true,
        initial: 0.96,
        rate: 0.9,
        tested: [6, 2],
        duplicated: { season: 6, seeds: 800 },
        shared: [{ season: 3, on: '02-14', seeds: 600, note: 'Six growers, a hundred seeds each' }],
      },
      { season: 2, viaCupboard: true, initial: 0.97, tested: [1], duplicated: { season: 1, seeds: 800 } },
    ],
  },
  {
    crop: 'Onion',
    name: 'Long Ayre Red',
    donor: 'a fisherman from Long Ayre',
    origin: 'Long Ayre, brought home from a voyage, nobody knows which',
    notes: 'The first lot is dying in the pantry; the young ones are in the freezer.',
    kept: inFreezer(5.8),
    lots: [
      { season: 13, kept: IN_PANTRY_ENVELOPE, initial: 0.93, rate: 0.8, tested: [12, 9, 6, 3] },
      { season: 8, initial: 0.95, rate: 1.2, tested: [7, 2], duplicated: { season: 7, seeds: 500 } },
      {
        season: 2,
        viaCupboard: true,
        initial: 0.97,
        rate: 1,
        tested: [1],
        shared: [{ season: 0, on: '02-09', seeds: 500, note: 'Seed swap in the hall' }],
      },
    ],
    decisions: [
      {
        seasonsBeforeComing: 1,
        action: 'leave',
        reason: 'The two lots in the freezer carry it. The old one stays in the pantry as a record only.',
      },
    ],
  },
  {
    crop: 'Onion',
    name: 'Kirk Geo Pickler',
    donor: 'the manse garden',
    origin: 'Kirk Geo',
    kept: inPantryJar(8.2),
    lots: [
      {
        season: 6,
        seeds: 1900,
        amount: 'weighed only',
        initial: 0.9,
        rate: 1.1,
        notes: 'Came in a tea tin, already cleaned. Nobody has counted it yet.',
      },
      { season: 2, seeds: 5200, tested: [] },
    ],
  },
  {
    crop: 'Leek',
    name: 'Northbie Winter',
    donor: 'the school garden at Northbie',
    origin: 'Northbie',
    notes: 'Stands through any gale. Its seed lay in the fridge in the summer of the failure.',
    kept: IN_FRIDGE_BOX,
    lots: [
      { season: 11, initial: 0.92, rate: 0.9, tested: [10, 6, 2] },
      {
        season: 7,
        initial: 0.95,
        rate: 0.9,
        tested: [6, 4, 2, { season: 1, notes: 'Again, to be sure of what the warm summer did.' }],
      },
      { season: 4, initial: 0.96, rate: 1, tested: [{ season: 3, on: '02-05' }, 2] },
    ],
    decisions: [
      {
        seasonsBeforeComing: 1,
        action: 'test-first',
        reason: 'The fridge stood warm for six weeks. Count it before giving up bed space.',
      },
    ],
  },
  {
    crop: 'Leek',
    name: 'Harbourmaster',
    donor: 'the harbour office garden',
    origin: 'The harbour, behind the ice house',
    notes: 'Saved at the last moment: grown again from seed that had stood warm.',
    kept: IN_FRIDGE_BOX,
    lots: [
      { season: 8, initial: 0.94, rate: 1, tested: [7, 5, 2] },
      { season: 5, seeds: 2600, initial: 0.95, rate: 1.1, tested: [4, 2], grownFrom: 0 },
      {
        season: 0,
        kept: inFreezer(5.5),
        viaCupboard: true,
        initial: 0.96,
        grownFrom: 1,
        sown: 600,
        plants: 41,
        notes: 'Forty-one plants came of six hundred seeds. Short of the usual number, but alive.',
      },
    ],
    decisions: [
      {
        seasonsBeforeComing: 2,
        action: 'regrow',
        lot: 1,
        reason: 'Half of it is dead since the summer in the warm fridge. Sow all we can spare.',
      },
      { seasonsBeforeComing: 1, action: 'leave', reason: 'New seed is in the freezer. Count it next winter.' },
    ],
  },
  {
    crop: 'Leek',
    name: 'Blue Skerry',
    donor: 'a crofter beyond Hallow Ness',
    origin: 'The last garden before the skerries, now left',
    notes: 'One lot, few seeds, and the garden it came from is gone.',
    kept: IN_FRIDGE_BOX,
    lots: [
      {
        season: 9,
        seeds: 310,
        amount: 'counted',
        initial: 0.9,
        rate: 1.1,
        tested: [
          { season: 8, dishes: [2, 25] },
          { season: 2, dishes: [2, 20] },
        ],
      },
    ],
  },
];
