import type { TestSeries } from '@/lib/server/queries/test-series';

/**
 * What a test in groups says so far, and what to do next; what stands between ** is bold.
 *
 * Checked in tests/app/series-words.test.ts
 */
export function seriesInWords({ soFar, plan, groups }: Pick<TestSeries, 'soFar' | 'plan' | 'groups'>): string {
  const { seedsTested, alive, decision, waiting } = soFar;
  const line = plan.line === undefined ? 'the line' : `the line of ${Math.round(plan.line * 100)} %`;
  const counted = seedsTested === 0 ? '' : `${alive} of ${seedsTested} seeds were alive. `;
  if (!decision.ok) return `${counted}More was tested than its plan has looks for: the plan decides nothing.`;
  if (decision.decision !== 'test-more') return `${counted}${ENDINGS[decision.decision](line)}`;
  if (waiting) {
    const open = groups.find(({ status }) => status === 'open');
    return `${counted}Group ${open?.groupNumber} is being counted; the plan looks again when it is closed.`;
  }
  return `${counted}That is not clear yet: **set ${decision.seeds} more seeds**.`;
}

const ENDINGS = {
  keep: (line: string) => `**Stop: the lot is above ${line}.** Keep it.`,
  regrow: (line: string) => `**Stop: the lot is below ${line}.** Regrow it.`,
  undecided: (line: string) =>
    `**The plan ends here, undecided**: the lot lies near ${line}. Its forecast says what to do.`,
};
