import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Pager } from '@/app/_components/list/pager';
import { PageHead } from '@/app/_components/page-head';
import { formatDate } from '@/app/_format/figures';
import { listHref } from '@/app/_format/list-href';
import { packetPath } from '@/app/_format/store-path';
import { storeQuery } from '@/lib/schemas/list-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findCareDuePage } from '@/lib/server/queries/care-due';

export const metadata: Metadata = { title: 'Packets to see to' };

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

/** Packets that stand open, and those whose desiccant is due. */
export default async function PacketsToSeeToPage({ searchParams }: Props) {
  await requirePerson('visitor');
  const { page } = storeQuery.parse(await searchParams);
  const list = await findCareDuePage(page);
  return (
    <>
      <PageHead
        above={<Link href="/stores">Stores</Link>}
        title="Packets to see to"
        below="Opened and not sealed again, or with a desiccant that is due."
      />
      {list.rows.length === 0 ? (
        <EmptyState>
          <p>No packet stands open, and no desiccant is due.</p>
        </EmptyState>
      ) : (
        <div className="sheet overflow-x-auto p-0!">
          <table className="ledger stacked">
            <thead>
              <tr>
                <th scope="col">Packet</th>
                <th scope="col">What</th>
                <th scope="col">Since or due</th>
                <th scope="col">Store</th>
              </tr>
            </thead>
            <tbody>
              {list.rows.map((row) => (
                <tr key={`${row.packetNumber} ${row.what}`}>
                  <th scope="row" className="row-head">
                    <Link href={packetPath(row.packetNumber)}>
                      {row.accessionName} <span className="figures whitespace-nowrap">{row.packetNumber}</span>
                    </Link>
                    <span className="quiet block text-sm font-normal">
                      {row.cropName}, lot <span className="figures">{row.lotNumber}</span>
                    </span>
                  </th>
                  <td data-label="what">{row.what === 'seal' ? 'seal it again' : 'change its desiccant'}</td>
                  <td className="whitespace-nowrap" data-label={row.what === 'seal' ? 'open since' : 'due'}>
                    {formatDate(row.on)}
                  </td>
                  <td data-label="store">{row.storeName}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <Pager href={(to) => listHref('/stores/packets', {}, { page: to })} page={list.page} pages={list.pages} />
    </>
  );
}
