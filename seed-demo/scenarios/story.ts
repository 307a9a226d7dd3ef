/**
 * The shapes in which the scenario is told. Seasons are counted back: season 0 is the last harvest, season 12 that of
 * twelve years before. Days are 'MM-DD' of the season's year.
 */
import type { Isolation } from '../../lib/domain/pollination/isolation';
import type { ContainerKey } from '../../lib/domain/stock/containers';
import type { StoreKind } from '../../lib/domain/stock/store-kinds';

export type StoreKey =
  | 'freezer'
  | 'fridge'
  | 'fridge-top'
  | 'fridge-bottom'
  | 'pantry'
  | 'drying-cupboard'
  | 'loft'
  | 'clover-box'
  | 'partner';

export interface MishapStory {
  season: number;
  from: string;
  days: number;
  /** of the air that the store takes on */
  temperatureC: number;
  /** 0-1 */
  relativeHumidity: number;
}

export interface ClimateStory {
  everyHours: number;
  yearsLogged: number;
  /** degrees C; season and hourly are half of the swing */
  temperature: { mean: number; season: number; hourly: number; wander: number };
  /** 0-1; null for a logger without humidity */
  humidity: { mean: number; season: number; wander: number } | null;
  mishaps: readonly MishapStory[];
  /** the logger was out */
  gaps: readonly { season: number; from: string; days: number }[];
}

export interface StoreStory {
  key: StoreKey;
  name: string;
  kind: StoreKind;
  inside?: StoreKey;
  /** it stood in `inside` first, and since that day in this one */
  movedInto?: { store: StoreKey; season: number; day: string };
  /** left out: as what it stands in */
  targetTemperatureC?: number;
  targetHumidityPercent?: number;
  capacityPackets?: number;
  notes?: string;
  climate?: ClimateStory;
}

/** Where a packet is put, in what, and at which moisture (percent of fresh weight; left out: not measured). */
export interface PlaceStory {
  store: StoreKey;
  container: ContainerKey;
  moisturePercent?: number;
}

export interface TestStory {
  season: number;
  /** left out: some day of that winter, before the sowing */
  on?: string;
  /** dishes and seeds in each; left out: as many as the lot can spare */
  dishes?: readonly [replicates: number, seeds: number];
  /** a result that the lot's ageing does not explain, 0-1 */
  shows?: number;
  notes?: string;
  /** the test was written down wrongly at first: the first dish with this many normal seedlings too many */
  firstWrittenWith?: { normalTooMany: number; reason: string };
}

export interface LotStory {
  /** of the harvest */
  season: number;
  kept?: PlaceStory;
  /** laid in the drying cupboard for the first weeks */
  viaCupboard?: boolean;
  /** seeds put in store; left out: what the crop usually gives */
  seeds?: number;
  /** how the amount was found; left out: weighed, with a thousand-seed weight */
  amount?: 'counted' | 'weighed only';
  isolation?: Isolation;
  plants?: number;
  treatment?: string;
  notes?: string;
  /** true viability when new, 0-1, and true rate of ageing against the published one; left out: drawn */
  initial?: number;
  rate?: number;
  /** years to lose one probit where the equation gives no answer */
  yearsPerProbit?: number;
  tested?: readonly (number | TestStory)[];
  moved?: readonly ({ season: number; on: string } & PlaceStory)[];
  /** safety duplicate sent to the partner bank */
  duplicated?: { season: number; seeds: number };
  shared?: readonly { season: number; on: string; seeds: number; note: string }[];
  lost?: { season: number; on: string; seeds: number; note: string };
  /** index of the lot of this accession from which it was grown; left out: the one before it */
  grownFrom?: number;
  /** seeds sown for it; left out: what the crop usually takes */
  sown?: number;
}

export interface DecisionStory {
  /** 0: for the coming sowing, 1: for the one before it; left out where the commands no longer take that season */
  seasonsBeforeComing: 0 | 1 | 2;
  action: 'regrow' | 'test-first' | 'leave';
  /** index of the lot to sow from */
  lot?: number;
  reason: string;
}

export interface AccessionStory {
  crop: CropName;
  name: string;
  donor: string;
  origin?: string;
  notes?: string;
  kept: PlaceStory;
  lots: readonly LotStory[];
  decisions?: readonly DecisionStory[];
}

export type CropName =
  | 'Onion'
  | 'Leek'
  | 'Parsnip'
  | 'Carrot'
  | 'Turnip'
  | 'Beet'
  | 'Kale'
  | 'Cabbage'
  | 'Barley'
  | 'Oat'
  | 'Broad bean'
  | 'Pea'
  | 'Red clover'
  | 'Lettuce';

/** How the island grows and tests a crop. */
export interface CropHabit {
  harvest: string;
  sowing: string;
  /** harvested in the year after sowing */
  biennial: boolean;
  isolation: Isolation;
  plants: number;
  /** seeds taken out of store to grow it again */
  seedsSown: number;
  seedsReceived: number;
  seedsHarvested: number;
  thousandSeedWeightG: number;
  method: string;
  /** of the seeds alive */
  hardShare: number;
  freshShare: number;
}
