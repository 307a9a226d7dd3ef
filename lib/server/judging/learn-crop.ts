import type Database from 'better-sqlite3';
import { type CropLearning, learnCropPrior } from '@/lib/domain/longevity/bank-learning/learn-crop-prior';
import type { TestedLot } from '@/lib/domain/longevity/bank-learning/lot-evidence';
import { type ChosenPrior, chooseLotPrior } from '@/lib/domain/longevity/priors';
import { ageTests, testsForModel } from './age-tests';
import { loadCropJudging } from './load-crop-judging';
import { loadLots } from './load-lots';
import { storeClimates } from './store-climates';

/** What a crop's own lots say, and how far the figures under it can be trusted. */
export interface LearntOfCrop {
  learning: CropLearning;
  /** why what is published is believed as it is, in a sentence */
  publishedReason: string;
  /** tested lots of which some stay's moisture was assumed */
  moistureAssumed: number;
  /** tested lots that lay outside the conditions in which the constants were fitted */
  outsideFittedRange: number;
  /** tested lots left out, because the equation says nothing of how they were kept */
  leftOut: number;
}

interface Kept {
  version: string;
  learnt: LearntOfCrop | null;
}

const holder = globalThis as typeof globalThis & { hilumLearnt?: Map<string, Kept> };

/** Lots of the crop with at least one test: an early word on how long the reckoning will take. */
export function countTestedLots(bulk: Database.Database, cropId: string): number {
  return testedLots(bulk, cropId).length;
}

/**
 * Learns a crop's typical initial viability and rate of ageing from its lots' tests. Kept in memory until anything is
 * written or the day ends. The starting point is always the published belief, never the bank's own figures: those may
 * have been learnt from these very tests, which would then count twice.
 *
 * @returns null when no longevity constants are chosen for the crop
 */
export function learnCrop(bulk: Database.Database, cropId: string, today: string): LearntOfCrop | null {
  holder.hilumLearnt ??= new Map();
  const version = versionOf(bulk, today);
  const known = holder.hilumLearnt.get(cropId);
  if (known?.version === version) return known.learnt;
  const learnt = reckon(bulk, cropId, today);
  holder.hilumLearnt.set(cropId, { version, learnt });
  return learnt;
}

/** Whether `learnCrop` would answer from memory. */
export function isLearnt(bulk: Database.Database, cropId: string, today: string): boolean {
  return holder.hilumLearnt?.get(cropId)?.version === versionOf(bulk, today);
}

function reckon(bulk: Database.Database, cropId: string, today: string): LearntOfCrop | null {
  const crop = loadCropJudging(bulk, [cropId]).get(cropId);
  if (!crop?.seed) return null;
  const climates = storeClimates(bulk);
  const lots: TestedLot[] = [];
  const doubts = { moistureAssumed: 0, outsideFittedRange: 0, leftOut: 0 };
  for (const lot of loadLots(bulk, testedLots(bulk, cropId))) {
    const { ageing, tests } = ageTests(lot, crop, climates, today);
    const forModel = testsForModel(tests);
    if (!ageing?.ok || forModel.tests.length === 0) {
      doubts.leftOut += 1;
      continue;
    }
    if (ageing.moistureAssumed) doubts.moistureAssumed += 1;
    if (ageing.outsideFittedRange) doubts.outsideFittedRange += 1;
    lots.push({ ...forModel, testsMade: tests.filter(({ probitsLost }) => probitsLost !== null).length });
  }
  const published = publishedBelief(crop.constantsBorrowed, lots.length, doubts);
  const learning = learnCropPrior({ lots, published: { initial: published.initial, logRate: published.logRate } });
  return { learning, publishedReason: published.reason, ...doubts };
}

/** What the equation is believed to say of most of these lots. */
function publishedBelief(
  borrowed: boolean,
  lots: number,
  { moistureAssumed, outsideFittedRange }: { moistureAssumed: number; outsideFittedRange: number },
): ChosenPrior {
  return chooseLotPrior({
    borrowed,
    outsideFittedRange: lots > 0 && 2 * outsideFittedRange >= lots,
    moistureAssumed: lots > 0 && 2 * moistureAssumed >= lots,
  });
}

function testedLots(bulk: Database.Database, cropId: string): string[] {
  return bulk
    .prepare<[string], string>(
      `SELECT l."id" FROM "Lot" l JOIN "Accession" a ON a."id" = l."accessionId"
       WHERE a."cropId" = ? AND EXISTS (SELECT 1 FROM "GerminationTest" t WHERE t."lotId" = l."id")
       ORDER BY l."id"`,
    )
    .pluck()
    .all(cropId);
}

/** Every command leaves an audit entry, and every reading raises its store's version: nothing changes without a trace. */
function versionOf(bulk: Database.Database, today: string): string {
  const written = bulk
    .prepare<[], string>(
      `SELECT COALESCE((SELECT MAX("id") FROM "AuditEntry"), 0) || ' ' || COALESCE((SELECT SUM(abs("climateVersion")) FROM "Store"), 0)`,
    )
    .pluck()
    .get();
  return `${bulk.name} ${today} ${written}`;
}
