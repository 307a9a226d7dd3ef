import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Filter, FilterBar } from '@/app/_components/list/filter-bar';
import { Pager } from '@/app/_components/list/pager';
import { RowLink } from '@/app/_components/list/row-link';
import { PageHead } from '@/app/_components/page-head';
import { formatCount, formatDate } from '@/app/_format/figures';
import { listHref } from '@/app/_format/list-href';
import { requestPath } from '@/app/_format/request-path';
import { recipientKindLabel } from '@/lib/domain/stock/recipient-kinds';
import { REQUEST_STATES } from '@/lib/domain/stock/request-states';
import { requestListQuery } from '@/lib/schemas/sharing-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findRequests, type RequestRow } from '@/lib/server/queries/sharing-requests';
import { StoresTabs } from '../_parts/stores-tabs';
import { RequestMark } from './_parts/request-mark';

export const metadata: Metadata = { title: 'Sharing' };

const PATH = '/stores/sharing';

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function SharingPage({ searchParams }: Props) {
  const person = await requirePerson('visitor');
  const query = requestListQuery.parse(await searchParams);
  const list = await findRequests(query);
  const narrowed = query.q !== '' || query.state !== '';
  const mayAdd = mayActAs(person, 'volunteer');
  return (
    <>
      <PageHead title="Sharing" below="Who asked for seed, and what went to them.">
        {mayAdd && (
          <Link href={`${PATH}/new`} className="button main">
            New request
          </Link>
        )}
      </PageHead>
      <StoresTabs here="sharing" />
      {(list.rows.length > 0 || narrowed) && (
        <FilterBar path={PATH} looksThrough="name or number" query={query} narrowed={narrowed}>
          <Filter
            name="state"
            label="State"
            value={query.state}
            all="all requests"
            options={REQUEST_STATES.map(({ key, label }) => ({ value: key, label }))}
          />
        </FilterBar>
      )}
      {list.rows.length > 0 ? (
        <RequestTable rows={list.rows} />
      ) : narrowed ? (
        <EmptyState>
          <p>
            No request matches. <Link href={PATH}>Show all requests</Link>.
          </p>
        </EmptyState>
      ) : (
        <EmptyState>
          <p className="say">
            Nobody has asked for seed yet. A request holds who asks, what goes to them, and the pack list; sending it
            takes the seed out of the ledger.
          </p>
          {mayAdd && (
            <Link href={`${PATH}/new`} className="button">
              Write down the first one
            </Link>
          )}
        </EmptyState>
      )}
      <Pager href={(page) => listHref(PATH, query, { page })} page={list.page} pages={list.pages} />
    </>
  );
}

function RequestTable({ rows }: { rows: RequestRow[] }) {
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <thead>
          <tr>
            <th scope="col">For whom</th>
            <th scope="col">Request</th>
            <th scope="col">Asked</th>
            <th scope="col" className="number">
              Lots
            </th>
            <th scope="col" className="number">
              Seeds
            </th>
            <th scope="col">State</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.number}>
              <th scope="row" className="row-head">
                <RowLink href={requestPath(row.number)}>
                  {row.recipient}
                  <span className="sr-only"> {row.number}</span>
                </RowLink>
                <span className="label block font-normal">{recipientKindLabel(row.recipientKind)}</span>
              </th>
              <td className="figures whitespace-nowrap" data-label="request">
                {row.number}
              </td>
              <td className="whitespace-nowrap" data-label="asked">
                {formatDate(row.askedOn)}
              </td>
              <td className="number" data-label="lots">
                {formatCount(row.lines)}
              </td>
              <td className="number" data-label="seeds">
                {formatCount(row.seeds)}
              </td>
              <td data-label="state">
                <RequestMark state={row.status} />
                {row.settledOn && <span className="label block">{formatDate(row.settledOn)}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
