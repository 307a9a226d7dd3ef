import { goesOnFrom, type SequentialLook, stopsOver } from '@/lib/domain/germination/sample-size/sequential-plan';
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

/**
 * How the plan decides at its coming look, so that whoever counts knows what is at stake.
 *
 * @returns null where it decides no more
 * Checked in tests/app/series-words.test.ts
 */
export function comingLookInWords({ soFar, plan }: Pick<TestSeries, 'soFar' | 'plan'>): string | null {
  const { seedsTested, decision } = soFar;
  if (!decision.ok || decision.decision !== 'test-more') return null;
  const index = plan.looks.findIndex((look) => look.seedsTested > seedsTested);
  const look = plan.looks[index];
  if (!look) return null;
  const next = plan.looks[index + 1];
  const { keepAtLeast, regrowAtMost } = look;
  const ways = [
    keepAtLeast === null ? null : `${keepAtLeast} or more alive: stop, keep the lot`,
    regrowAtMost === null ? null : `${regrowAtMost} or fewer alive: stop, regrow it`,
    isGap(look) ? `anything else: ${next ? `set ${next.seedsTested - look.seedsTested} more` : 'undecided'}` : null,
  ].filter((way) => way !== null);
  return `When ${look.seedsTested} seeds are counted, ${ways.join('; ')}.`;
}

/** Some counts lie between its two limits. */
const isGap = (look: SequentialLook) => goesOnFrom(look) < stopsOver(look);

const ENDINGS = {
  keep: (line: string) => `**Stop: the lot is above ${line}.** Keep it.`,
  regrow: (line: string) => `**Stop: the lot is below ${line}.** Regrow it.`,
  undecided: (line: string) =>
    `**The plan ends here, undecided**: the lot lies near ${line}. Its forecast says what to do.`,
};
