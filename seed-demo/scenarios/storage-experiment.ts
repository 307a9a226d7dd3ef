/** What the school on Brannasay did with onion seed over two winters: the demo's own longevity constants come from it. */
export interface ExperimentStory {
  name: string;
  crop: string;
  notes: string;
  lots: readonly { lot: string; initialProbits: number }[];
  moisturesPercent: readonly number[];
  temperaturesC: readonly number[];
  /** probits that the class expected to be lost at each count */
  plannedLosses: readonly number[];
  /** nobody waited longer, days */
  longestDays: number;
  seedsAtEachCount: number;
  /** what is true of this seed; the class had only the published constants to plan by */
  truth: { KE: number; CW: number; CH: number; CQ: number };
}

export const ONION_EXPERIMENT: ExperimentStory = {
  name: 'Onions of the school, two winters',
  crop: 'Onion',
  notes:
    'Fifty seeds a time in sealed jars, in the cellar (25 °C from the boiler), the airing cupboard and the old egg incubator. Moistures by weighing over salt solutions. Counted after 12 days on paper.',
  lots: [
    { lot: 'Sandwater Flat', initialProbits: 1.95 },
    { lot: 'Long Ayre Red', initialProbits: 1.35 },
  ],
  moisturesPercent: [6.1, 9, 12.8],
  temperaturesC: [25, 35, 45],
  plannedLosses: [0.5, 1, 1.6, 2.2, 3],
  longestDays: 720,
  seedsAtEachCount: 50,
  truth: { KE: 7.12, CW: 3.55, CH: 0.0329, CQ: 0.000478 },
};
