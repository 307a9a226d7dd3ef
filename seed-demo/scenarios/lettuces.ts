/** Lettuces: easy to keep true, quick to lose. */
import { IN_PANTRY_ENVELOPE, inFreezer, inFridgeTube } from './places';
import type { AccessionStory } from './story';

export const LETTUCE_STORIES: readonly AccessionStory[] = [
  {
    crop: 'Lettuce',
    name: 'Stone Wall',
    donor: 'the nurse',
    origin: 'Sown itself along the wall of the surgery',
    kept: inFreezer(4.8),
    lots: [
      {
        season: 11,
        kept: inFridgeTube(5.4),
        initial: 0.95,
        rate: 1.1,
        tested: [10, 6, 2],
        moved: [{ season: 8, on: '11-02', ...inFreezer(5.4) }],
      },
      { season: 7, initial: 0.96, tested: [6, 2], duplicated: { season: 6, seeds: 1000 } },
      { season: 3, viaCupboard: true, initial: 0.97, tested: [2] },
      { season: 0, viaCupboard: true, initial: 0.98 },
    ],
  },
  {
    crop: 'Lettuce',
    name: 'Candlemas',
    donor: 'the choir',
    origin: 'Sown under glass at Candlemas, hence the name',
    kept: inFridgeTube(5.1),
    lots: [
      { season: 8, initial: 0.95, rate: 1.2, tested: [7, 3] },
      { season: 4, initial: 0.96, tested: [3], duplicated: { season: 3, seeds: 600 } },
      { season: 1, viaCupboard: true, initial: 0.97, tested: [0] },
    ],
  },
  {
    crop: 'Lettuce',
    name: 'Old Manse Bronze',
    donor: 'the manse garden',
    kept: IN_PANTRY_ENVELOPE,
    lots: [
      { season: 6, initial: 0.94, rate: 1.3, tested: [5, 3, 1] },
      { season: 2, initial: 0.96, rate: 1.2, tested: [1] },
    ],
  },
];
