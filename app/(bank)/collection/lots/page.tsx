import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { CropFilter, JudgementFilter, StoreFilter } from '@/app/_components/list/usual-filters';
import { lotListQuery } from '@/lib/schemas/list-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findKeptCrops } from '@/lib/server/queries/crops';
import { findLots } from '@/lib/server/queries/lots';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { CollectionList, NoneMatches } from '../_parts/collection-list';
import { LotTable } from '../_parts/lot-table';

export const metadata: Metadata = { title: 'Lots' };

const PATH = '/collection/lots';
const SORTS = [
  ['accession', 'by accession'],
  ['lot', 'by lot number'],
  ['-harvest', 'newest harvest first'],
  ['-urgency', 'most urgent first'],
  ['due', 'test due first'],
  ['seeds', 'least seed first'],
  ['alive', 'least alive first'],
] as const;

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function LotsPage({ searchParams }: Props) {
  const person = await requirePerson('visitor');
  const query = lotListQuery.parse(await searchParams);
  const [list, crops, stores] = await Promise.all([findLots(query), findKeptCrops(), findStoreChoices()]);
  const narrowed = query.q !== '' || query.crop !== '' || query.store !== '' || query.action !== '';
  return (
    <CollectionList
      here="lots"
      path={PATH}
      query={query}
      one="lot"
      looksThrough="name, number or crop"
      sorts={SORTS}
      narrowed={narrowed}
      list={list}
      buttons={
        mayActAs(person, 'volunteer') && (
          <Link href="/collection/lots/log" className="button main">
            Log a cleaned lot
          </Link>
        )
      }
      filters={
        <>
          <CropFilter crops={crops} chosen={query.crop} />
          <StoreFilter stores={stores} chosen={query.store} />
          <JudgementFilter chosen={query.action} />
        </>
      }
      empty={narrowed ? <NoneMatches one="lot" path={PATH} /> : <NoLotYet />}
    >
      <LotTable rows={list.rows} path={PATH} query={query} />
    </CollectionList>
  );
}

function NoLotYet() {
  return (
    <EmptyState>
      <p className="say">
        No lot yet. A lot is cleaned seed of one accession from one harvest: the unit that is stored and judged.
      </p>
      <Link href="/collection/lots/log" className="button">
        Log the first one
      </Link>
    </EmptyState>
  );
}
