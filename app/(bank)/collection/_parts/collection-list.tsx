import Link from 'next/link';
import type { ReactNode } from 'react';
import { EmptyState } from '@/app/_components/list/empty-state';
import { FilterBar } from '@/app/_components/list/filter-bar';
import { Pager } from '@/app/_components/list/pager';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { listHref } from '@/app/_format/list-href';
import { CollectionTabs } from './collection-tabs';

interface Props {
  here: 'accessions' | 'lots' | 'crops';
  path: string;
  query: Record<string, string | number> & { q: string; sort: string };
  /** one of what the list holds: 'lot' */
  one: string;
  /** behind their number while nothing is searched or filtered */
  all?: string;
  looksThrough: string;
  sorts: readonly (readonly [string, string])[];
  /** something is searched or filtered */
  narrowed: boolean;
  list: { rows: readonly unknown[]; total: number; page: number; pages: number };
  buttons: ReactNode;
  filters: ReactNode;
  /** in place of an empty table */
  empty: ReactNode;
  /** the table */
  children: ReactNode;
}

/** One of the lists of the collection: how many there are, search and filters, the table or why there is none, pages. */
export function CollectionList(props: Props) {
  const { here, path, query, one, all = '', looksThrough, sorts, narrowed, list } = props;
  return (
    <>
      <PageHead
        title="Collection"
        below={`${formatCount(list.total)} ${list.total === 1 ? one : `${one}s`}${narrowed ? ' found' : all}`}
      >
        {props.buttons}
      </PageHead>
      <CollectionTabs here={here} />
      <FilterBar path={path} looksThrough={looksThrough} query={query} sorts={sorts} narrowed={narrowed}>
        {props.filters}
      </FilterBar>
      {list.rows.length > 0 ? props.children : props.empty}
      <Pager href={(page) => listHref(path, query, { page })} page={list.page} pages={list.pages} />
    </>
  );
}

/** Nothing of what is there is what was looked for. */
export function NoneMatches({ one, path }: { one: string; path: string }) {
  return (
    <EmptyState>
      <p>
        {`No ${one} matches. `}
        <Link href={path}>{`Show all ${one}s`}</Link>, or look with fewer words.
      </p>
    </EmptyState>
  );
}
