import type { TestSummary } from './result';

const NUMBER_WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/**
 * Says in plain words whether the replicates of a test agree, for a steward at the bench.
 *
 * @param summary  from `summariseTest`
 * @returns one or two sentences
 * Checked in tests/domain/germination/tolerance-verdict.test.ts
 */
export function toleranceVerdict(summary: TestSummary): string {
  const { rangeBetweenReplicates: range, toleratedRange: tolerated, withinTolerance } = summary;
  if (range === null || tolerated === null || withinTolerance === null) {
    return summary.toleranceRefusal === 'too-few-seeds'
      ? 'With fewer than 10 seeds in a replicate nobody can tell whether the replicates agree: set more seeds in each.'
      : 'There is only one replicate, so nothing shows whether the count can be repeated: set two or more next time.';
  }
  const replicates = named(summary);
  if (withinTolerance) {
    if (range === 0) return `${replicates} agree: all gave the same figure.`;
    return `${replicates} agree: highest and lowest differ by ${points(range)}, up to ${tolerated} is usual.`;
  }
  return (
    `${replicates} do not agree: highest and lowest differ by ${points(range)}, and up to ${tolerated} is usual. ` +
    'Test again before you trust this figure.'
  );
}

function named({ replicateCount, comparedReplicates }: TestSummary): string {
  if (replicateCount === comparedReplicates) return `The ${inWords(replicateCount)} replicates`;
  return `The ${inWords(replicateCount)} replicates, joined into ${inWords(comparedReplicates)} of 100 seeds,`;
}

function inWords(count: number): string {
  return NUMBER_WORDS[count] ?? String(count);
}

function points(range: number): string {
  const shown = Math.round(range * 10) / 10;
  return shown === 1 ? '1 point' : `${shown} points`;
}
