/** What somebody wrote down of a lot and may correct; how to read it. */
export const LOT_FACTS = {
  harvestedOn: true,
  generation: true,
  isolation: true,
  plantsHarvested: true,
  cleanWeightG: true,
  thousandSeedWeightG: true,
  treatment: true,
  notes: true,
} as const;
