import { JudgementMark } from '@/app/_components/judgement-mark';
import { formatInstant } from '@/app/_format/figures';
import type { getAccession } from '@/lib/server/queries/accessions';

type Accession = NonNullable<Awaited<ReturnType<typeof getAccession>>>;

/** What was decided about growing this accession again, newest first, with the reason given. */
export function Decisions({ accession }: { accession: Accession }) {
  if (accession.decisions.length === 0) return null;
  return (
    <section className="grid gap-3" aria-labelledby="decisions">
      <h2 id="decisions">Decisions</h2>
      <ul className="grid gap-3">
        {accession.decisions.map((decision) => (
          <li key={decision.id} className="flex flex-wrap items-baseline gap-x-3 gap-y-1">
            <JudgementMark
              action={decision.action as 'regrow' | 'test-first' | 'leave'}
              label={decision.action === 'regrow' ? `Regrow ${decision.season}` : undefined}
            />
            <span>
              {decision.reason}
              <span className="label block">
                {decision.byName}, {formatInstant(decision.decidedAt)}
              </span>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
