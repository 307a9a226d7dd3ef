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
 * What was read is read again under the write lock when another program has written meanwhile, so that no judgement is
 * called today's that rests on yesterday's ledger.
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
  let version = dataVersion(bulk);
  let grounds = readGrounds(bulk, lots === 'all' ? 'all' : lotsOfTheSameAccessions(bulk, lots));
  const accessions = groupByAccession(grounds.records);
  let done = 0;
  for (let start = 0; start < accessions.length; start += ACCESSIONS_AT_A_TIME) {
    let some = accessions.slice(start, start + ACCESSIONS_AT_A_TIME);
    bulk
      .transaction(() => {
        if (dataVersion(bulk) !== version) {
          // Later accessions were read before the change too: they are read again in their turn.
          version = Number.NaN;
          const lotIds = some.flat().map((lot) => lot.id);
          grounds = readGrounds(bulk, lotsOfTheSameAccessions(bulk, lotIds));
          some = groupByAccession(grounds.records);
        }
        const write = judgementWriter(bulk, grounds.climates, today);
        for (const lotsOfOne of some) {
          const crop = cropOf(lotsOfOne, grounds.crops);
          write(evaluateAccession(lotsOfOne, crop, grounds.climates, today), crop);
          done += lotsOfOne.length;
        }
      })
      .immediate();
    onProgress?.(done);
    if (start + ACCESSIONS_AT_A_TIME < accessions.length) await new Promise((resolve) => setImmediate(resolve));
  }
}

/** Everything that judgements are made from. */
interface Grounds {
  records: LotRecord[];
  crops: Map<string, CropJudging>;
  climates: StoreClimates;
}

function readGrounds(bulk: Database.Database, lotIds: LotsToJudge): Grounds {
  const records = loadLots(bulk, lotIds);
  const crops = loadCropJudging(bulk, lotIds === 'all' ? 'all' : new Set(records.map((lot) => lot.cropId)));
  return { records, crops, climates: storeClimates(bulk) };
}

/** Another number than before when any other connection has committed since. */
const dataVersion = (bulk: Database.Database) => bulk.pragma('data_version', { simple: true }) as number;

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
