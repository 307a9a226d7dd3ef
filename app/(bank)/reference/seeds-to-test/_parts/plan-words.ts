import type { SequentialDecision } from '@/lib/domain/germination/sample-size/sequential-decision';
import type { SequentialPlan } from '@/lib/domain/germination/sample-size/sequential-plan';

/** The plan's first look as instructions, such as 'Set 40. If 34 or more germinate, stop: keep the lot.' */
export function planInWords({ looks }: SequentialPlan): string {
  const [first, second] = looks;
  if (!first) return '';
  const { seedsTested, regrowAtMost, keepAtLeast } = first;
  if (!second) {
    return `Test ${seedsTested}. If ${keepAtLeast} or more germinate, the lot is above the line: keep it. If fewer do, regrow it.`;
  }
  const keep =
    keepAtLeast === null
      ? 'No count is enough to keep it yet.'
      : `If ${keepAtLeast} or more germinate, stop: the lot is above the line.`;
  const regrow =
    regrowAtMost === null
      ? ''
      : ` If ${regrowAtMost} or fewer ${keepAtLeast === null ? 'germinate' : 'do'}, stop and regrow it.`;
  return `Test ${seedsTested}. ${keep}${regrow} Otherwise test ${second.seedsTested - seedsTested} more and look again.`;
}

/** What to do now, from the seeds tested so far. */
export function decisionInWords(decision: SequentialDecision): string {
  if (!decision.ok)
    return `The plan ends at ${decision.mostSeeds} seeds: what was tested beyond it decides nothing here.`;
  switch (decision.decision) {
    case 'keep':
      return 'Stop: the lot is above the line. Keep it.';
    case 'regrow':
      return 'Stop and regrow it.';
    case 'test-more':
      return decision.groupBegun
        ? `Test ${decision.seeds} more to complete the group, then look.`
        : `Test ${decision.seeds} more.`;
    default:
      return 'The plan ends here undecided.';
  }
}
