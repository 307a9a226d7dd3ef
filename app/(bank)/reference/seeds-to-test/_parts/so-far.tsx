import { estimateAfterStopping } from '@/lib/domain/germination/sample-size/estimate-after-stopping';
import { sequentialDecision } from '@/lib/domain/germination/sample-size/sequential-decision';
import type { SequentialPlan } from '@/lib/domain/germination/sample-size/sequential-plan';
import { decisionInWords } from './plan-words';

interface Props {
  plan: SequentialPlan;
  printed: SequentialPlan | null;
  tested: number;
  germinated: number;
}

/** What the plan says of the seeds tested so far, and at a stop the germination to write down. */
export function SoFar({ plan, printed, tested, germinated }: Props) {
  const decision = sequentialDecision(plan, { seedsTested: tested, germinated });
  const stopped = decision.ok && decision.decision !== 'test-more';
  const estimate = stopped ? estimateAfterStopping(plan, { seedsTested: tested, germinated }) : null;
  return (
    <div className="grid gap-2 border-b border-rule pb-4">
      <p className="say">
        {tested > 0 && `${germinated} of ${tested} germinated. `}
        <b>{decisionInWords(decision)}</b>
      </p>
      {printed && (
        <p className="max-w-prose">
          The printed plan says: {decisionInWords(sequentialDecision(printed, { seedsTested: tested, germinated }))}
        </p>
      )}
      {stopped && estimate?.ok && (
        <p className="max-w-prose">
          The plain share is {percent(estimate.plain)} %. Stopping at a clear count makes such shares lean away from the
          line; an estimate free of that is {percent(estimate.unbiased)} %. Record all {tested} seeds as tested: the
          forecast needs no correction.
        </p>
      )}
      {stopped && estimate && !estimate.ok && (
        <p className="max-w-prose">By this plan the test would have stopped at an earlier look.</p>
      )}
    </div>
  );
}

const percent = (proportion: number) => (proportion * 100).toFixed(1);
