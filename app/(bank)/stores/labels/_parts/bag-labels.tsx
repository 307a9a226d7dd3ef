import Link from 'next/link';
import { notFound } from 'next/navigation';
import { LABELS_PATH, readLabelsAddress } from '@/app/_components/labels/labels-address';
import { PrintLabels } from '@/app/_components/labels/print-labels';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { requestPath } from '@/app/_format/request-path';
import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import { bagLabel } from '@/lib/domain/labels/bag-label';
import { type BagsToLabel, findBagsToLabel } from '@/lib/server/queries/bag-labels';
import { getBank } from '@/lib/server/queries/bank';
import { findFormats } from '@/lib/server/queries/label-formats';
import { StoresTabs } from '../../_parts/stores-tabs';

/** The labels of what is given away: one for each bag on the list of a request. */
export async function BagLabels({ address, maySetFormats }: { address: Address; maySetFormats: boolean }) {
  const { request } = readLabelsAddress(address);
  const [found, formats, bank] = await Promise.all([findBagsToLabel(request), findFormats(), getBank()]);
  if (!found) notFound();
  const { recipient, bags } = found;
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
        <PrintLabels
          path={LABELS_PATH}
          address={address}
          formats={formats}
          texts={bags.map((bag) => bagLabel(bag, bank.address))}
          maySetFormats={maySetFormats}
        >
          <BagList bags={bags} />
        </PrintLabels>
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
