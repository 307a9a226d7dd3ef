import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { requestPath } from '@/app/_format/request-path';
import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import { bagLabel } from '@/lib/domain/labels/bag-label';
import type { LabelRun } from '@/lib/server/labels/print-run';
import { type BagsToLabel, findBagsToLabel } from '@/lib/server/queries/bag-labels';
import { getBank } from '@/lib/server/queries/bank';
import { findFormats } from '@/lib/server/queries/label-formats';
import { StoresTabs } from '../../_parts/stores-tabs';
import { readLabelsAddress } from './labels-address';
import { PrintOptions } from './print-options';
import { runOfAddress } from './run-of-address';
import { RunPreview } from './run-preview';

/** The labels of what is given away: one for each bag on the list of a request. */
export async function BagLabels({ address, maySetFormats }: { address: Address; maySetFormats: boolean }) {
  const { request, sheet } = readLabelsAddress(address);
  const [found, formats, bank] = await Promise.all([findBagsToLabel(request), findFormats(), getBank()]);
  if (!found) notFound();
  const { recipient, bags } = found;
  const { question, asked } = runOfAddress(address, formats, bags.length);
  const run: LabelRun | null = asked && { ...asked, texts: bags.map((bag) => bagLabel(bag, bank.address)) };
  return (
    <>
      <PageHead
        above={<Link href={requestPath(request)}>request {request}</Link>}
        title="Labels for the bags"
        below={`What goes to ${recipient}: one label for each line of the list.`}
      />
      <StoresTabs here="labels" />
      {bags.length === 0 ? (
        <EmptyState>
          <p>
            There is no bag to label. <Link href={requestPath(request)}>See the list of request {request}</Link>
          </p>
        </EmptyState>
      ) : (
        <div className="grid items-start gap-6 lg:grid-cols-2">
          <div className="grid min-w-0 gap-6">
            <BagList bags={bags} />
            <PrintOptions
              address={address}
              question={question}
              formats={formats}
              mayPrint
              maySetFormats={maySetFormats}
            />
          </div>
          <section className="grid min-w-0 gap-3" aria-labelledby="preview">
            <h2 id="preview">Preview</h2>
            {run ? (
              <RunPreview address={address} run={run} sheet={sheet} />
            ) : (
              <p>Put the marked fields right to see the labels.</p>
            )}
          </section>
        </div>
      )}
    </>
  );
}

function BagList({ bags }: { bags: BagsToLabel['bags'] }) {
  return (
    <details className="sheet">
      <summary className="cursor-pointer py-2.5 font-semibold">
        {formatCount(bags.length)} {bags.length === 1 ? 'bag' : 'bags'}
      </summary>
      <ul className="divide-y divide-rule">
        {bags.map((bag) => (
          <li key={bag.lineId} className="flex min-h-11 flex-wrap items-center justify-between gap-x-3">
            <span>
              <span className="figures">{bag.lotNumber}</span> {bag.accessionName}
            </span>
            <span className="figures">{bag.seeds === null ? 'no count yet' : `${formatCount(bag.seeds)} seeds`}</span>
          </li>
        ))}
      </ul>
      <p className="quiet mt-2">
        The labels name neither your packets nor their place. <Link href="/stores/labels">Labels of packets</Link>
      </p>
    </details>
  );
}
