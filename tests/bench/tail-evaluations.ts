/**
 * How many evaluations of a normal tail the judging of a lot takes, counted by the engine itself (precise coverage, block by
 * block), so that the product carries no counters. A program of its own, because the engine must be told before it compiles
 * what it is to count. DATA_DIR: a folder that `judging.ts` has left. Prints one line of JSON.
 */
import { type Profiler, Session } from 'node:inspector/promises';

/** Accessions that are counted, about three lots each. */
const ACCESSIONS = 400;

/** Functions each call of which evaluates one tail of a normal curve, one of K's distribution function, or the inverse of one. */
const ONE_EACH = new Set([
  'fastLogCdf',
  'fastProbit',
  'normalCdf',
  'normalQuantile',
  'normalLogCdf',
  'look',
  'lookBetween',
  'lookIntegral',
]);
/** A binomial likelihood takes two tails: that the seed is alive, and that it is not. */
const TWO_EACH = new Set(['addAt']);
/** The same along many points: counted by the body of its loop. */
const TWO_EACH_TIME_ROUND = new Set(['addAlong']);

function tailEvaluations(scripts: Profiler.ScriptCoverage[]): number {
  let count = 0;
  for (const script of scripts) {
    if (script.url.includes('node_modules')) continue;
    for (const { functionName, ranges } of script.functions) {
      const calls = ranges[0]?.count ?? 0;
      if (ONE_EACH.has(functionName)) count += calls;
      if (TWO_EACH.has(functionName)) count += 2 * calls;
      if (TWO_EACH_TIME_ROUND.has(functionName)) count += 2 * timesRound(ranges);
    }
  }
  return count;
}

/** How often the loops of a function went round: what its blocks ran beyond the function itself, those within others left out. */
function timesRound([whole, ...blocks]: Profiler.CoverageRange[]): number {
  let times = 0;
  let end = -1;
  for (const block of blocks) {
    if (block.startOffset < end || block.count <= (whole?.count ?? 0)) continue;
    times += block.count;
    end = block.endOffset;
  }
  return times;
}

const session = new Session();
session.connect();
await session.post('Profiler.enable');
await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
const { connections } = await import('../../lib/server/database/connections');
const { evaluateAccession, groupByAccession } = await import('../../lib/server/judging/judge-lots');
const { loadCropJudging } = await import('../../lib/server/judging/load-crop-judging');
const { loadLots } = await import('../../lib/server/judging/load-lots');
const { storeClimates } = await import('../../lib/server/judging/store-climates');
const { today } = await import('../../lib/server/today');
const { bulk } = connections();
const accessions = groupByAccession(loadLots(bulk, 'all')).slice(0, ACCESSIONS);
const crops = loadCropJudging(bulk, 'all');
const climates = storeClimates(bulk);
const judge = () => {
  let lots = 0;
  for (const records of accessions) {
    const crop = crops.get(records[0]?.cropId ?? '');
    if (!crop) throw new Error('a lot without crop');
    lots += evaluateAccession(records, crop, climates, today()).length;
  }
  return lots;
};
judge(); // reads and integrates the stores' readings
await session.post('Profiler.takePreciseCoverage'); // and sets the counts back to nothing
const lots = judge();
const { result } = await session.post('Profiler.takePreciseCoverage');
process.stdout.write(`${JSON.stringify({ tailEvaluationsPerLot: tailEvaluations(result) / lots })}\n`);
process.exit(0);
