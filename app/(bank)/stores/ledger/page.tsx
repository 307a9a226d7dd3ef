import type { Metadata } from 'next';
import Link from 'next/link';
import { LedgerSums } from '@/app/_components/ledger-sums';
import { LedgerTable } from '@/app/_components/ledger-table';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Pager } from '@/app/_components/list/pager';
import { PageHead } from '@/app/_components/page-head';
import { listHref } from '@/app/_format/list-href';
import { ledgerQuery } from '@/lib/schemas/ledger-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findKeptCrops } from '@/lib/server/queries/crops';
import { findLedger, findLedgerWriters } from '@/lib/server/queries/ledger';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { StoresTabs } from '../_parts/stores-tabs';
import { LedgerFilter } from './_parts/ledger-filter';

export const metadata: Metadata = { title: 'Ledger' };

const PATH = '/stores/ledger';

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function LedgerPage({ searchParams }: Props) {
  const person = await requirePerson('visitor');
  const query = ledgerQuery.parse(await searchParams);
  const [list, people, crops, stores] = await Promise.all([
    findLedger(query),
    findLedgerWriters(),
    findKeptCrops(),
    findStoreChoices(),
  ]);
  const { page, ...filters } = query;
  const narrowed = Object.values(filters).some((value) => value !== '');
  return (
    <>
      <PageHead title="Ledger" below="Every seed in or out, newest day first.">
        {list.total > 0 && (
          <a href={listHref('/api/ledger', filters, {})} className="button" download>
            Save as CSV
          </a>
        )}
      </PageHead>
      <StoresTabs here="ledger" />
      <LedgerFilter path={PATH} query={query} narrowed={narrowed} people={people} crops={crops} stores={stores} />
      {list.rows.length > 0 ? (
        <>
          <LedgerSums total={list.total} seedsIn={list.seedsIn} seedsOut={list.seedsOut} />
          <div className="sheet overflow-x-auto p-0!">
            <LedgerTable
              lines={list.rows}
              caption="Ledger of the bank, newest day first"
              of="packet and lot"
              mayChange={mayActAs(person, 'volunteer')}
              back={listHref(PATH, filters, { page })}
            />
          </div>
        </>
      ) : narrowed ? (
        <EmptyState>
          <p>
            No line of the ledger matches. <Link href={PATH}>Show all lines</Link>, or look with fewer conditions.
          </p>
        </EmptyState>
      ) : (
        <EmptyState>
          <p className="say">Nothing has gone in or out yet. The first line is written when a lot is stored.</p>
          <Link href="/collection/lots/log" className="button">
            Log a cleaned lot
          </Link>
        </EmptyState>
      )}
      <Pager href={(next) => listHref(PATH, filters, { page: next })} page={list.page} pages={list.pages} />
    </>
  );
}
