/**
 * How many evaluations of a normal tail some work makes, counted by the engine itself (precise coverage, block by block), so
 * that the product carries no counters. The work runs some ten times slower meanwhile.
 */
import { type Profiler, Session } from 'node:inspector/promises';

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

export async function countTailEvaluations(work: () => void): Promise<number> {
  const session = new Session();
  session.connect();
  await session.post('Profiler.enable');
  await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
  work();
  const { result } = await session.post('Profiler.takePreciseCoverage');
  await session.post('Profiler.stopPreciseCoverage');
  session.disconnect();
  let count = 0;
  for (const script of result) {
    if (script.url.includes('node_modules')) continue;
    for (const fn of script.functions) {
      const calls = fn.ranges[0]?.count ?? 0;
      if (ONE_EACH.has(fn.functionName)) count += calls;
      if (TWO_EACH.has(fn.functionName)) count += 2 * calls;
      if (TWO_EACH_TIME_ROUND.has(fn.functionName)) count += 2 * timesRound(fn.ranges);
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
