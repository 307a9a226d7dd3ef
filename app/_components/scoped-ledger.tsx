import { listHref } from '@/app/_format/list-href';
import type { LedgerPage } from '@/lib/server/queries/ledger';
import { LedgerSums } from './ledger-sums';
import { LedgerTable } from './ledger-table';
import { EmptyState } from './list/empty-state';
import { Pager } from './list/pager';

interface Props {
  list: LedgerPage;
  path: string;
  of: 'packet' | 'packet and lot';
  caption: string;
  mayChange: boolean;
}

/** The ledger of one lot or accession: what it adds up to, and its lines, page by page. */
export function ScopedLedger({ list, path, of, caption, mayChange }: Props) {
  if (list.rows.length === 0) {
    return (
      <EmptyState>
        <p>Nothing has gone in or out.</p>
      </EmptyState>
    );
  }
  return (
    <>
      <LedgerSums total={list.total} seedsIn={list.seedsIn} seedsOut={list.seedsOut} />
      <div className="sheet overflow-x-auto p-0!">
        <LedgerTable
          lines={list.rows}
          caption={caption}
          of={of}
          mayChange={mayChange}
          back={listHref(path, {}, { page: list.page })}
        />
      </div>
      <Pager href={(page) => listHref(path, {}, { page })} page={list.page} pages={list.pages} />
    </>
  );
}
