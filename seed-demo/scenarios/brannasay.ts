/**
 * Brannasay Community Seed Bank: an invented bank on an invented island, small, cool and windy. Islanders bring what
 * their gardens and crofts have kept; donors are named by what they do, and no one here is a real person or place.
 */
import { ALLIUM_STORIES } from './alliums';
import { CABBAGE_STORIES } from './cabbages';
import { CEREAL_STORIES } from './cereals';
import { LEGUME_STORIES } from './legumes';
import { LETTUCE_STORIES } from './lettuces';
import { ROOT_STORIES } from './roots';
import type { AccessionStory } from './story';

export const BANK_NAME = 'Brannasay Community Seed Bank';

/** Sowing month and how many viable seeds make a plant in its wind. */
export const BANK_HABITS = { sowingMonth: 4, emergencePercent: 65 };

export const ACCESSION_STORIES: readonly AccessionStory[] = [
  ...ALLIUM_STORIES,
  ...ROOT_STORIES,
  ...CABBAGE_STORIES,
  ...CEREAL_STORIES,
  ...LEGUME_STORIES,
  ...LETTUCE_STORIES,
];
