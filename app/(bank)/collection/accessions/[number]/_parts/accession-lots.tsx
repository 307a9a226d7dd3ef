import Link from 'next/link';
import { JudgementMark } from '@/app/_components/judgement-mark';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Viability } from '@/app/_components/viability';
import { formatCount, formatMonth } from '@/app/_format/figures';
import { isolationLabel } from '@/app/_format/isolation-label';
import { lotPath } from '@/app/_format/links';
import type { getAccession } from '@/lib/server/queries/accessions';

type Accession = NonNullable<Awaited<ReturnType<typeof getAccession>>>;

/** The lots of an accession, newest harvest first, each with what is judged of it. */
export function AccessionLots({ accession }: { accession: Accession }) {
  return (
    <section className="grid gap-3" aria-labelledby="lots">
      <h2 id="lots">Lots</h2>
      {accession.lots.length === 0 ? (
        <EmptyState>
          <p>
            No seed of it is stored yet.{' '}
            <Link href={`/collection/lots/log?accession=${encodeURIComponent(accession.number)}`}>
              Log a cleaned lot
            </Link>{' '}
            when there is.
          </p>
        </EmptyState>
      ) : (
        <div className="sheet overflow-x-auto p-0!">
          <table className="ledger stacked">
            <thead>
              <tr>
                <th scope="col">Lot</th>
                <th scope="col">Harvest</th>
                <th scope="col">Isolation</th>
                <th scope="col">Store</th>
                <th scope="col" className="number">
                  Seed left
                </th>
                <th scope="col" className="number">
                  Alive
                </th>
                <th scope="col">Judgement</th>
              </tr>
            </thead>
            <tbody>
              {accession.lots.map((lot) => (
                <tr key={lot.number}>
                  <th scope="row" className="row-head min-w-0!">
                    <Link
                      href={lotPath(lot.number)}
                      className="figures font-bold whitespace-nowrap text-ink underline decoration-rule underline-offset-3 hover:decoration-ink"
                    >
                      {lot.number}
                    </Link>
                    {lot.treatment && <span className="block text-sm font-normal text-ochre">treated seed</span>}
                  </th>
                  <td className="whitespace-nowrap" data-label="harvest">
                    {formatMonth(lot.harvestedOn)}
                    <span className="label block">
                      {lot.generation === 0 ? 'as received' : `regrown ${lot.generation}×`}
                    </span>
                  </td>
                  <td data-label="isolation">{isolationLabel(lot.isolation)}</td>
                  <td data-label="store">{lot.judgement?.storeName ?? '–'}</td>
                  <td className="number" data-label="seed left">
                    {lot.judgement ? formatCount(lot.judgement.seedsLeft) : '–'}
                  </td>
                  <td className="number" data-label="alive">
                    {lot.judgement ? (
                      <Viability
                        median={lot.judgement.viabilityMedian}
                        lower={lot.judgement.viabilityLower}
                        upper={lot.judgement.viabilityUpper}
                      />
                    ) : (
                      '–'
                    )}
                  </td>
                  <td data-label="judgement">
                    {lot.judgement ? (
                      <JudgementMark action={lot.judgement.action as 'regrow' | 'test-first' | 'leave'} />
                    ) : (
                      <span className="quiet">not judged yet</span>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}
