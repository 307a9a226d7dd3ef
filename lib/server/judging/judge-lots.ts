import type Database from 'better-sqlite3';
import type { Prisma } from '@/generated/prisma/client';
import { type EvaluatedLot, evaluateLot } from './evaluate-lot';
import { type CropJudging, loadCropJudging } from './load-crop-judging';
import { type LotRecord, loadLots } from './load-lots';
import { type StoreClimates, storeClimates } from './store-climates';
import { judgementWriter } from './write-judgements';

export type LotsToJudge = readonly string[] | 'all';

/** Accessions judged before the server looks after visitors again. */
const ACCESSIONS_AT_A_TIME = 100;

/** In the command's own transaction: the judgements of these lots no longer hold, whatever happens next. */
export async function markForJudging(tx: Prisma.TransactionClient, lots: LotsToJudge): Promise<void> {
  const where = lots === 'all' ? {} : { lotId: { in: [...lots] } };
  await tx.lotJudgement.updateMany({ where, data: { judgedOn: '' } });
}

/**
 * Judges lots anew, with all lots of their accessions, and writes what the lists show. Runs inside the write queue.
 *
 * @param bulk        the connection that writes
 * @param lots        lot ids, or the whole collection
 * @param today       calendar date for which the judgements hold
 * @param onProgress  told how many lots are done
 */
export async function judgeLots(
  bulk: Database.Database,
  lots: LotsToJudge,
  today: string,
  onProgress?: (done: number) => void,
): Promise<void> {
  const lotIds = lots === 'all' ? 'all' : lotsOfTheSameAccessions(bulk, lots);
  const records = loadLots(bulk, lotIds);
  const accessions = groupByAccession(records);
  const crops = loadCropJudging(bulk, lots === 'all' ? 'all' : new Set(records.map((lot) => lot.cropId)));
  const climates = storeClimates(bulk);
  const writer = judgementWriter(bulk, climates, today);
  let done = 0;
  for (let start = 0; start < accessions.length; start += ACCESSIONS_AT_A_TIME) {
    const some = accessions.slice(start, start + ACCESSIONS_AT_A_TIME);
    bulk.transaction(() => {
      for (const lotsOfOne of some) {
        const crop = cropOf(lotsOfOne, crops);
        writer(evaluateAccession(lotsOfOne, crop, climates, today), crop);
        done += lotsOfOne.length;
      }
    })();
    onProgress?.(done);
    if (start + ACCESSIONS_AT_A_TIME < accessions.length) await new Promise((resolve) => setImmediate(resolve));
  }
}

/** Evaluates the lots of one accession in each other's company. */
export function evaluateAccession(
  lots: readonly LotRecord[],
  crop: CropJudging,
  climates: StoreClimates,
  today: string,
): EvaluatedLot[] {
  const withSeed = lots.filter((lot) => lot.packets.some((packet) => packet.seeds > 0));
  return lots.map((lot) =>
    evaluateLot(lot, crop, climates, { isOnlyLot: withSeed.every((other) => other.id === lot.id) }, today),
  );
}

function lotsOfTheSameAccessions(bulk: Database.Database, lots: readonly string[]): string[] {
  return bulk
    .prepare<[string], string>(
      `SELECT "id" FROM "Lot" WHERE "accessionId" IN
         (SELECT "accessionId" FROM "Lot" WHERE "id" IN (SELECT "value" FROM json_each(?)))`,
    )
    .pluck()
    .all(JSON.stringify(lots));
}

/** Lots put together by accession, in the order in which their first lots come. */
export function groupByAccession(lots: readonly LotRecord[]): LotRecord[][] {
  const groups = new Map<string, LotRecord[]>();
  for (const lot of lots) {
    const group = groups.get(lot.accessionId);
    if (group) group.push(lot);
    else groups.set(lot.accessionId, [lot]);
  }
  return [...groups.values()];
}

function cropOf(lots: readonly LotRecord[], crops: Map<string, CropJudging>): CropJudging {
  const crop = crops.get(lots[0]?.cropId ?? '');
  if (!crop) throw new Error(`the crop of lot ${lots[0]?.number} does not exist`);
  return crop;
}
