import Link from 'next/link';
import { listHref } from '@/app/_format/list-href';
import type { LedgerPage } from '@/lib/server/queries/ledger';
import { LedgerSums } from './ledger-sums';
import { LedgerTable } from './ledger-table';
import { EmptyState } from './list/empty-state';
import { Pager } from './list/pager';
import { PageHead } from './page-head';

interface Props {
  /** whose ledger it is */
  scope: 'lot' | 'accession';
  number: string;
  /** of the variety */
  name: string;
  /** the page of the lot or accession */
  path: string;
  below: string;
  list: LedgerPage;
  mayChange: boolean;
}

/** The ledger of one lot or accession: its head, what it adds up to, and its lines, page by page. */
export function ScopedLedger({ scope, number, name, path, below, list, mayChange }: Props) {
  return (
    <>
      <PageHead
        above={
          <Link href={path}>
            {name} {number}
          </Link>
        }
        title={`Ledger of ${number}`}
        below={below}
      >
        {list.total > 0 && (
          <a href={`/api/ledger?${scope}=${encodeURIComponent(number)}`} className="button" download>
            Save as CSV
          </a>
        )}
      </PageHead>
      {list.rows.length === 0 ? (
        <EmptyState>
          <p>Nothing has gone in or out.</p>
        </EmptyState>
      ) : (
        <Lines scope={scope} number={number} path={`${path}/ledger`} list={list} mayChange={mayChange} />
      )}
    </>
  );
}

function Lines({ scope, number, path, list, mayChange }: Omit<Props, 'name' | 'below'>) {
  return (
    <>
      <LedgerSums total={list.total} seedsIn={list.seedsIn} seedsOut={list.seedsOut} />
      <div className="sheet overflow-x-auto p-0!">
        <LedgerTable
          lines={list.rows}
          caption={`Ledger of ${scope} ${number}, newest day first`}
          of={scope === 'lot' ? 'packet' : 'packet and lot'}
          mayChange={mayChange}
          back={listHref(path, {}, { page: list.page })}
        />
      </div>
      <Pager href={(page) => listHref(path, {}, { page })} page={list.page} pages={list.pages} />
    </>
  );
}
