/**
 * The largest and smallest values that any form, file or programme may bring in. They catch slips (a misplaced decimal
 * mark, a wrong column), they are not biology: each leaves room beyond the most extreme seed that a bank could hold.
 */

/** percent of fresh weight; below is drier than any store keeps seed, above is not seed but fruit */
export const MOISTURE_PERCENT = { min: 0.5, max: 60 } as const;

/** grams for a thousand seeds; orchid dust to the largest beans and nuts, with room */
export const THOUSAND_SEED_WEIGHT_G = { min: 0.005, max: 5_000 } as const;

/** grams of seed in one lot or movement: 100 kg; the least is one that a bench balance can show */
export const WEIGHT_G = { min: 0.0001, max: 100_000 } as const;

/** seeds in one lot, movement or test */
export const SEED_COUNT = { max: 10_000_000 } as const;

/** plants grown or harvested */
export const PLANT_COUNT = { max: 100_000 } as const;

/** replicates of one germination test */
export const REPLICATE_COUNT = { max: 100 } as const;

/** the earliest date taken; the latest is today, or no limit for planned dates */
export const EARLIEST_DATE = '1900-01-01';

/** characters of an accession number, lot number or other label code */
export const LABEL_CODE_LENGTH = { max: 40 } as const;

/** characters of names and one-line texts */
export const SHORT_TEXT_LENGTH = { max: 200 } as const;

/** characters of notes */
export const LONG_TEXT_LENGTH = { max: 5_000 } as const;
