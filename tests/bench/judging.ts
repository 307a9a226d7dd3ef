/**
 * How long it takes to judge a collection of a given size, in one process: read from SQLite, evaluate, write the rows.
 * Arguments: number of lots; or --stores, to write only the stores with their readings, which all sizes share.
 * DATA_DIR: with --stores an empty folder; otherwise a folder so prepared, which is left with the judged collection in it.
 * Prints one line of JSON, a JudgingFigures.
 */
import path from 'node:path';
import { fastLogCdf } from '../../lib/domain/longevity/fast-log-cdf';
import { closeConnections, connections } from '../../lib/server/database/connections';
import { migrate } from '../../lib/server/database/migrate';
import { databaseFile } from '../../lib/server/env';
import { evaluateAccession, groupByAccession } from '../../lib/server/judging/judge-lots';
import { loadCropJudging } from '../../lib/server/judging/load-crop-judging';
import { type LotRecord, loadLots } from '../../lib/server/judging/load-lots';
import { storeClimates } from '../../lib/server/judging/store-climates';
import { judgementWriter } from '../../lib/server/judging/write-judgements';
import { loadReferenceFacts } from '../../lib/server/reference/load-reference-facts';
import { today } from '../../lib/server/today';
import { loadLargeStores, loadLotsIntoLargeStores } from '../../seed-demo/large-collection';

/** Seconds as the clock shows them, and of processor time, which a busy machine does not stretch. */
interface Timing {
  seconds: number;
  cpuSeconds: number;
}

export interface JudgingFigures {
  lots: number;
  tests: number;
  readings: number;
  load: Timing;
  /** the first time: reads the stores' readings and integrates them too */
  evaluate: Timing;
  /** the second time, as at midnight in a server that runs */
  evaluateAgain: Timing;
  write: Timing;
  peakMemoryMegabytes: number;
  /** of processor time, in a bare loop in the same process; tail-evaluations.ts counts how many a lot takes */
  nanosecondsPerTail: number;
}

const STORES = 20;
const YEARS_OF_READINGS = 5;
const TESTS_PER_LOT = 3;
/** Evaluations timed to find out what one costs: enough for a steady figure. */
const FLOOR_SAMPLE = 20_000_000;

async function writeStores(): Promise<{ readings: number }> {
  await migrate(databaseFile(), path.resolve('prisma/migrations'));
  await loadReferenceFacts();
  const made = await loadLargeStores({ stores: STORES, yearsOfReadings: YEARS_OF_READINGS });
  await closeConnections();
  return made;
}

async function measureJudging(lots: number): Promise<JudgingFigures> {
  const made = await loadLotsIntoLargeStores({ lots, testsPerLot: TESTS_PER_LOT });
  const { bulk } = connections();
  const { readings } = bulk.prepare<[], { readings: number }>(`SELECT COUNT(*) AS readings FROM "Reading"`).get() ?? {
    readings: 0,
  };
  const day = today();
  const load = stopwatch();
  const { accessions, crops } = load.time(() => ({
    accessions: groupByAccession(loadLots(bulk, 'all')),
    crops: loadCropJudging(bulk, 'all'),
  }));
  const climates = storeClimates(bulk);
  const cropOf = (records: readonly LotRecord[]) => {
    const crop = crops.get(records[0]?.cropId ?? '');
    if (!crop) throw new Error('a lot without crop');
    return crop;
  };
  const evaluate = stopwatch();
  const write = stopwatch();
  const put = judgementWriter(bulk, climates, day);
  // As judgeLots does it, accession by accession, so that no more is kept in memory than there.
  bulk.transaction(() => {
    for (const records of accessions) {
      const crop = cropOf(records);
      const evaluated = evaluate.time(() => evaluateAccession(records, crop, climates, day));
      write.time(() => put(evaluated, crop));
    }
  })();
  const evaluateAgain = stopwatch();
  evaluateAgain.time(() => {
    for (const records of accessions) evaluateAccession(records, cropOf(records), climates, day);
  });
  logTails(FLOOR_SAMPLE);
  const floor = stopwatch();
  floor.time(() => logTails(FLOOR_SAMPLE));
  const peakMemoryMegabytes = process.resourceUsage().maxRSS / 1024;
  await closeConnections();
  return {
    lots,
    tests: made.tests,
    readings,
    load: load.taken,
    evaluate: evaluate.taken,
    evaluateAgain: evaluateAgain.taken,
    write: write.taken,
    peakMemoryMegabytes,
    nanosecondsPerTail: (floor.taken.cpuSeconds * 1e9) / FLOOR_SAMPLE,
  };
}

/** Adds up what several stretches of work take. */
function stopwatch() {
  const taken: Timing = { seconds: 0, cpuSeconds: 0 };
  const time = <Result>(work: () => Result): Result => {
    const startedAt = performance.now();
    const cpuBefore = process.cpuUsage();
    const result = work();
    const { user, system } = process.cpuUsage(cpuBefore);
    taken.seconds += (performance.now() - startedAt) / 1000;
    taken.cpuSeconds += (user + system) / 1e6;
    return result;
  };
  return { taken, time };
}

/** Returns the sum so that the loop cannot be left out. */
function logTails(count: number): number {
  let sum = 0;
  for (let index = 0; index < count; index += 1) sum += fastLogCdf((index % 1000) / 125 - 4);
  return sum;
}

async function runFor(argument: string | undefined): Promise<unknown> {
  if (argument === '--stores') return writeStores();
  const lots = Number(argument);
  if (!Number.isInteger(lots) || lots < 1)
    throw new Error(`the number of lots must be a whole number, got ${argument}`);
  return measureJudging(lots);
}

process.stdout.write(`${JSON.stringify(await runFor(process.argv[2]))}\n`);
