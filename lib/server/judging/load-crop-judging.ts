import type Database from 'better-sqlite3';
import type { SeedKind } from '@/lib/domain/longevity/seed-kind';
import type { StorageBehaviour } from '@/lib/domain/reference/crop-facts';

/** How lots of one crop are judged: the bank's rules, the crop's own where set, and the constants of its seed. */
export interface CropJudging {
  id: string;
  name: string;
  scientificName: string;
  family: string;
  pollination: string;
  plantsNeeded: number;
  /** true when neither the steward nor the reference says how many plants this crop needs */
  plantsNeededAssumed: boolean;
  sowingMonth: number;
  emergence: number;
  assurance: number;
  thresholdKind: string;
  thresholdValue: number;
  constantsBorrowed: boolean;
  constantsName: string | null;
  constantsMark: string | null;
  borrowedBecause: string | null;
  prior: { initial?: { mean: number; sd: number }; logRate?: { mean: number; sd: number } };
  /** null when no constants are chosen for the crop */
  seed: SeedKind | null;
}

/** Plants to grow when nothing is known of the crop: on the safe side for most self-pollinators. From memory. */
const DEFAULT_PLANTS_NEEDED = 50;

interface CropRow {
  id: string;
  name: string;
  scientificName: string;
  family: string;
  pollination: string;
  storageBehaviour: StorageBehaviour;
  constantsBorrowed: number;
  borrowedBecause: string | null;
  plantsNeeded: number | null;
  sowingMonth: number | null;
  emergence: number | null;
  thresholdKind: string | null;
  thresholdValue: number | null;
  priorInitialMean: number | null;
  priorInitialSd: number | null;
  priorLogRateMean: number | null;
  priorLogRateSd: number | null;
  constantsName: string | null;
  constantsMark: string | null;
  KE: number | null;
  CW: number;
  CH: number;
  CQ: number;
  moistureFromPercent: number | null;
  moistureToPercent: number | null;
  temperatureFromC: number | null;
  temperatureToC: number | null;
  lowMoistureLimitPercent: number | null;
  oilFraction: number | null;
  minimumPlants: number | null;
}

interface BankRow {
  thresholdKind: string;
  thresholdValue: number;
  sowingMonth: number;
  emergence: number;
  assurance: number;
}

/**
 * Crops' judging rules by crop id: two queries.
 *
 * @param cropIds  which crops; 'all' for every crop of the bank
 */
export function loadCropJudging(bulk: Database.Database, cropIds: Iterable<string> | 'all'): Map<string, CropJudging> {
  const bank = bulk.prepare<[], BankRow>(`SELECT * FROM "Bank" WHERE "id" = 1`).get();
  if (!bank) throw new Error('the bank has no settings row');
  const crops = bulk
    .prepare<object, CropRow>(
      `SELECT c.*, k."name" AS "constantsName", k."mark" AS "constantsMark", k."KE", k."CW", k."CH", k."CQ",
         k."moistureFromPercent", k."moistureToPercent", k."temperatureFromC", k."temperatureToC",
         k."lowMoistureLimitPercent",
         (SELECT (MIN(f."lower") + MAX(f."upper")) / 2 FROM "CropFact" f WHERE f."cropId" = c."id" AND f."kind" = 'oil fraction') AS "oilFraction",
         (SELECT MAX(f."lower") FROM "CropFact" f WHERE f."cropId" = c."id" AND f."kind" = 'minimum plants') AS "minimumPlants"
       FROM "Crop" c LEFT JOIN "LongevityConstants" k ON k."id" = c."longevityConstantsId"
       ${cropIds === 'all' ? '' : 'WHERE c."id" IN (SELECT "value" FROM json_each(@ids))'}`,
    )
    .all(cropIds === 'all' ? {} : { ids: JSON.stringify([...cropIds]) });
  return new Map(crops.map((crop) => [crop.id, judgingOf(crop, bank)]));
}

function judgingOf(crop: CropRow, bank: BankRow): CropJudging {
  const ownThreshold = crop.thresholdKind !== null && crop.thresholdValue !== null;
  const plants = crop.plantsNeeded ?? crop.minimumPlants;
  return {
    id: crop.id,
    name: crop.name,
    scientificName: crop.scientificName,
    family: crop.family,
    pollination: crop.pollination,
    plantsNeeded: plants === null ? DEFAULT_PLANTS_NEEDED : Math.ceil(plants),
    plantsNeededAssumed: plants === null,
    sowingMonth: crop.sowingMonth ?? bank.sowingMonth,
    emergence: crop.emergence ?? bank.emergence,
    assurance: bank.assurance,
    thresholdKind: ownThreshold ? (crop.thresholdKind as string) : bank.thresholdKind,
    thresholdValue: ownThreshold ? (crop.thresholdValue as number) : bank.thresholdValue,
    constantsBorrowed: crop.constantsBorrowed === 1,
    constantsName: crop.constantsName,
    constantsMark: crop.constantsMark,
    borrowedBecause: crop.borrowedBecause,
    prior: {
      initial: pair(crop.priorInitialMean, crop.priorInitialSd),
      logRate: pair(crop.priorLogRateMean, crop.priorLogRateSd),
    },
    seed: crop.KE === null ? null : seedOf(crop, crop.KE),
  };
}

function seedOf(crop: CropRow, KE: number): SeedKind {
  return {
    constants: { KE, CW: crop.CW, CH: crop.CH, CQ: crop.CQ },
    constantsRange: {
      moistureFromPercent: crop.moistureFromPercent ?? undefined,
      moistureToPercent: crop.moistureToPercent ?? undefined,
      temperatureFromC: crop.temperatureFromC ?? undefined,
      temperatureToC: crop.temperatureToC ?? undefined,
      lowMoistureLimitPercent: crop.lowMoistureLimitPercent ?? undefined,
    },
    storageBehaviour: crop.storageBehaviour,
    oilFraction: crop.oilFraction ?? 0,
  };
}

const pair = (mean: number | null, sd: number | null) => (mean === null || sd === null ? undefined : { mean, sd });
