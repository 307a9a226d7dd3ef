import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Filter, FilterBar, JUDGEMENT_OPTIONS } from '@/app/_components/list/filter-bar';
import { Pager } from '@/app/_components/list/pager';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { listHref } from '@/app/_format/list-href';
import { lotListQuery } from '@/lib/schemas/list-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findKeptCrops } from '@/lib/server/queries/crops';
import { findLots } from '@/lib/server/queries/lots';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { CollectionTabs } from '../_parts/collection-tabs';
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
    <>
      <PageHead
        title="Collection"
        below={`${formatCount(list.total)} ${list.total === 1 ? 'lot' : 'lots'}${narrowed ? ' found' : ''}`}
      >
        {mayActAs(person, 'volunteer') && (
          <Link href="/collection/lots/log" className="button main">
            Log a cleaned lot
          </Link>
        )}
      </PageHead>
      <CollectionTabs here="lots" />
      <FilterBar path={PATH} looksThrough="name, number or crop" query={query} sorts={SORTS} narrowed={narrowed}>
        <Filter
          name="crop"
          label="Crop"
          value={query.crop}
          all="all crops"
          options={crops.map((crop) => ({ value: crop.id, label: crop.name }))}
        />
        <Filter
          name="store"
          label="Store"
          value={query.store}
          all="all stores"
          options={stores.map((store) => ({ value: store.id, label: store.name }))}
        />
        <Filter
          name="action"
          label="Judgement"
          value={query.action}
          all="every judgement"
          options={JUDGEMENT_OPTIONS}
        />
      </FilterBar>
      {list.rows.length > 0 ? (
        <LotTable rows={list.rows} path={PATH} query={query} />
      ) : narrowed ? (
        <EmptyState>
          <p>
            No lot matches. <Link href={PATH}>Show all lots</Link>, or look with fewer words.
          </p>
        </EmptyState>
      ) : (
        <EmptyState>
          <p className="say">
            No lot yet. A lot is cleaned seed of one accession from one harvest: the unit that is stored and judged.
          </p>
          <Link href="/collection/lots/log" className="button">
            Log the first one
          </Link>
        </EmptyState>
      )}
      <Pager href={(page) => listHref(PATH, query, { page })} page={list.page} pages={list.pages} />
    </>
  );
}
