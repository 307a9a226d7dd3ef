/**
 * What the bank knows about a crop before it has any seed of it: isolation, minimum plants, testing
 * conditions, seed size, ordinary storage life, and which longevity constants to use.
 *
 * Every figure carries a mark (how sure we are of it) and a source. Where sources disagree there is one
 * fact per source, or one fact with a range; nothing is averaged away.
 */

/** How a fact is known. 'published': read in the named text. "bank's own": entered by the steward. */
export const FACT_MARKS = ['published', 'common practice', 'from memory', "bank's own"] as const;
export type FactMark = (typeof FACT_MARKS)[number];

export const FACT_KINDS = [
  'isolation distance',
  'minimum plants',
  'minimum germination',
  'seeds per gram',
  'storage life',
  'oil fraction',
] as const;
export type FactKind = (typeof FACT_KINDS)[number];

/** Unit of `lower` and `upper` for each kind of fact. */
export const FACT_UNITS: Record<FactKind, string> = {
  'isolation distance': 'm',
  'minimum plants': 'plants',
  'minimum germination': 'proportion, hard seed counted as germinated',
  'seeds per gram': 'seeds per gram',
  'storage life': 'years in an ordinary cool, dry, dark room',
  'oil fraction': 'proportion of seed dry weight',
};

export type Fact = {
  kind: FactKind;
  /** Low end of the range in the unit of the kind; equal to `upper` when one figure is given. */
  lower: number | null;
  upper: number | null;
  /** What the figure leaves out: conditions, the printed wording, how the sources differ. */
  text: string | null;
  mark: FactMark;
  /** Citation with section, row and address; ends with the printed row name in double quotes if there is one. */
  source: string;
};

/** Substrata of 7 CFR 201.58(a)(7), by the printed code. */
export const SUBSTRATA = {
  B: 'between blotters',
  TB: 'top of blotters',
  T: 'paper towel, folded or rolled',
  S: 'sand or soil',
  TS: 'top of sand or soil',
  P: 'covered Petri dish',
  C: 'creped cellulose under a punched blotter',
  TC: 'top of creped cellulose, no blotter',
  RB: 'blotter with raised cover',
} as const;
export type SubstratumCode = keyof typeof SUBSTRATA;

/**
 * One temperature regime. Constant: `nightC` is null. Alternating: `nightC` for about 16 hours, then `dayC`
 * (with the light, if any) for about 8 hours a day.
 */
export type TemperatureRegime = { dayC: number; nightC: number | null };

export type GerminationMethod = {
  substrata: SubstratumCode[];
  /** The same substrata in words, in the same order. */
  substrataInWords: string[];
  /** As printed: '20-30; 25'. After a semicolon, the alternate. */
  temperatures: string;
  /** Parsed; the regular regime first, alternates after it. */
  temperatureRegimes: TemperatureRegime[];
  /** Null: only the final count is prescribed. */
  firstCountDays: number | null;
  finalCountDays: number;
  /** Light is required in the ordinary test (not only to break dormancy). */
  light: boolean;
  /** Preparation, and treatment of fresh or dormant seed, in words. */
  preTreatment: string | null;
  hardSeedOccurs: boolean;
  mark: FactMark;
  source: string;
};

export const POLLINATIONS = ['self', 'mostly self', 'insect', 'wind', 'insect and wind'] as const;
export type Pollination = (typeof POLLINATIONS)[number];

export const LIFE_CYCLES = ['annual', 'biennial', 'perennial'] as const;
export type LifeCycle = (typeof LIFE_CYCLES)[number];

/** How a species' seed bears drying: orthodox bears it, recalcitrant is killed by it. */
export const STORAGE_BEHAVIOURS = ['orthodox', 'intermediate', 'recalcitrant', 'unknown'] as const;
export type StorageBehaviour = (typeof STORAGE_BEHAVIOURS)[number];

/** Constants of the viability equation to use, and whether they belong to this species. */
export type ConstantsChoice = {
  /** A key of LONGEVITY_CONSTANTS. */
  longevityConstantsKey: string;
  /** True: fitted to another species; show it on every screen that forecasts. */
  constantsBorrowed: boolean;
  /** Why these; null only when the constants are the species' own. */
  borrowedBecause: string | null;
};

export type CropFacts = ConstantsChoice & {
  /** English name, singular, unique among the crops. */
  name: string;
  scientificName: string;
  family: string;
  pollination: Pollination;
  /** Life cycle to seed; a tender perennial grown as an annual counts as annual. */
  lifeCycle: LifeCycle;
  storageBehaviour: { behaviour: StorageBehaviour; mark: FactMark; source: string };
  facts: Fact[];
  germination: GerminationMethod[];
};
