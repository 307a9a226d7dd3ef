import type Database from 'better-sqlite3';
import type { Pollination } from '@/lib/domain/reference/crop-facts';
import { judgeAccession } from '@/lib/domain/regrow/judge-accession';
import { isWorthTesting } from '@/lib/domain/regrow/worth-testing';
import type { EvaluatedLot } from './evaluate-lot';
import type { CropJudging } from './load-crop-judging';
import { searchTextOf } from './search-text';
import type { StoreClimates } from './store-climates';

type Row = Record<string, string | number | null>;

/** @returns a function that writes the judgement rows of one accession and its lots */
export function judgementWriter(
  bulk: Database.Database,
  climates: StoreClimates,
  today: string,
): (lots: EvaluatedLot[], crop: CropJudging) => void {
  const put = putter(bulk);
  return (lots, crop) => {
    for (const lot of lots) put('LotJudgement', 'lotId', lotRow(lot, crop, climates, today));
    const row = accessionRow(lots, crop, today);
    if (row) put('AccessionJudgement', 'accessionId', row);
  };
}

function putter(bulk: Database.Database): (table: string, key: string, row: Row) => void {
  const statements = new Map<string, Database.Statement>();
  return (table, key, row) => {
    let statement = statements.get(table);
    if (!statement) {
      const columns = Object.keys(row);
      const quoted = columns.map((column) => `"${column}"`);
      const changes = quoted
        .filter((column) => column !== `"${key}"`)
        .map((column) => `${column} = excluded.${column}`);
      statement = bulk.prepare(
        `INSERT INTO "${table}" (${quoted.join(', ')}) VALUES (${columns.map((column) => `@${column}`).join(', ')})
         ON CONFLICT ("${key}") DO UPDATE SET ${changes.join(', ')}`,
      );
      statements.set(table, statement);
    }
    statement.run(row);
  };
}

function lotRow(
  { lot, judgement, seedsLeft, mainPacket, tests }: EvaluatedLot,
  crop: CropJudging,
  climates: StoreClimates,
  today: string,
): Row {
  const storeId = mainPacket?.placements.at(-1)?.storeId ?? null;
  const worthTesting = isWorthTesting({
    seedsLeft,
    everTested: tests.length > 0,
    chanceBelow: judgement.chanceBelowNow,
  });
  return {
    lotId: lot.id,
    judgedOn: today,
    lotNumber: lot.number,
    accessionId: lot.accessionId,
    accessionNumber: lot.accessionNumber,
    accessionName: lot.accessionName,
    cropId: crop.id,
    cropName: crop.name,
    harvestedOn: lot.harvestedOn,
    searchText: searchTextOf([lot.number, lot.accessionNumber, lot.accessionName, crop.name, crop.scientificName]),
    seedsLeft,
    storeId,
    storeName: storeId ? climates.nameOf(storeId) : null,
    ...figuresOf({ judgement, crop }),
    testDueOn: worthTesting ? judgement.testDue.dueOn : null,
    testDueReason: worthTesting ? judgement.testDue.sentence : reasonForNoTest(seedsLeft),
    lastTestedOn: tests.at(-1)?.finishedOn ?? null,
    action: judgement.action,
    urgency: judgement.urgency,
    sentence: judgement.sentence,
    noForecastBecause: judgement.forecastRefusal,
  };
}

function reasonForNoTest(seedsLeft: number): string {
  if (seedsLeft === 0) return 'No seed is left to test.';
  return 'All but surely below the line: regrow from it or clear it out; another count would only use up its seed.';
}

function accessionRow(lots: EvaluatedLot[], crop: CropJudging, today: string): Row | null {
  const first = lots[0]?.lot;
  if (!first) return null;
  const judged = judgeAccession(
    lots.map(({ lot, judgement, seedsLeft }) => ({
      lotNumber: lot.number,
      judgement,
      seedsLeft,
      generation: lot.generation,
      isolation: lot.isolation,
    })),
    crop.pollination as Pollination,
  );
  const key = lots.find(({ lot }) => lot.number === judged.keyLotNumber);
  return {
    accessionId: first.accessionId,
    judgedOn: today,
    accessionNumber: first.accessionNumber,
    accessionName: first.accessionName,
    cropId: crop.id,
    cropName: crop.name,
    searchText: searchTextOf([first.accessionNumber, first.accessionName, crop.name, crop.scientificName]),
    lots: lots.length,
    seedsLeft: lots.reduce((sum, lot) => sum + lot.seedsLeft, 0),
    keyLotId: key?.lot.id ?? null,
    keyLotNumber: key?.lot.number ?? null,
    sowFromLotId: lots.find(({ lot }) => lot.number === judged.sowFromLotNumber)?.lot.id ?? null,
    ...(key ? figuresOf({ judgement: key.judgement, crop }) : NO_FIGURES),
    action: judged.action,
    season: judged.season,
    urgency: judged.urgency,
    sentence: judged.sentence,
  };
}

const NO_FIGURES = {
  viabilityMedian: null,
  viabilityLower: null,
  viabilityUpper: null,
  threshold: null,
  chanceBelow: null,
  seedsNeeded: null,
  plantsNeeded: null,
  lastSafeSeason: null,
  rescue: 0,
};

/** The figures that a lot and its accession show alike. */
function figuresOf({ judgement, crop }: { judgement: EvaluatedLot['judgement']; crop: CropJudging }): Row {
  const { viabilityNow, threshold, chanceBelowNow, seedsNeeded, lastSafeSeason, rescue } = judgement;
  return {
    viabilityMedian: viabilityNow?.median ?? null,
    viabilityLower: viabilityNow?.lower ?? null,
    viabilityUpper: viabilityNow?.upper ?? null,
    threshold,
    chanceBelow: chanceBelowNow,
    // No number of dead seeds is enough: shown as unknown rather than as infinite.
    seedsNeeded: seedsNeeded !== null && Number.isFinite(seedsNeeded) ? seedsNeeded : null,
    plantsNeeded: crop.plantsNeeded,
    lastSafeSeason: typeof lastSafeSeason === 'number' ? lastSafeSeason : null,
    rescue: rescue ? 1 : 0,
  };
}
