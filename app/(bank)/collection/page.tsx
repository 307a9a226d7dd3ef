import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Filter, FilterBar, JUDGEMENT_OPTIONS } from '@/app/_components/list/filter-bar';
import { Pager } from '@/app/_components/list/pager';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { listHref } from '@/app/_format/list-href';
import { accessionListQuery } from '@/lib/schemas/list-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findAccessions } from '@/lib/server/queries/accessions';
import { findKeptCrops } from '@/lib/server/queries/crops';
import { AccessionTable } from './_parts/accession-table';
import { CollectionTabs } from './_parts/collection-tabs';

export const metadata: Metadata = { title: 'Accessions' };

const PATH = '/collection';
const SORTS = [
  ['accession', 'by name'],
  ['number', 'by number'],
  ['crop', 'by crop'],
  ['-urgency', 'most urgent first'],
  ['seeds', 'least seed first'],
  ['alive', 'least alive first'],
] as const;

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function AccessionsPage({ searchParams }: Props) {
  const person = await requirePerson('visitor');
  const query = accessionListQuery.parse(await searchParams);
  const [list, crops] = await Promise.all([findAccessions(query), findKeptCrops()]);
  const narrowed = query.q !== '' || query.crop !== '' || query.action !== '';
  return (
    <>
      <PageHead
        title="Collection"
        below={`${formatCount(list.total)} ${list.total === 1 ? 'accession' : 'accessions'}${narrowed ? ' found' : ''}`}
      >
        {mayActAs(person, 'volunteer') && (
          <Link href="/collection/lots/log" className="button main">
            Log a cleaned lot
          </Link>
        )}
        {mayActAs(person, 'steward') && (
          <Link href="/collection/accessions/new" className="button">
            Add an accession
          </Link>
        )}
      </PageHead>
      <CollectionTabs here="accessions" />
      <FilterBar path={PATH} looksThrough="name, number or crop" query={query} sorts={SORTS} narrowed={narrowed}>
        <Filter
          name="crop"
          label="Crop"
          value={query.crop}
          all="all crops"
          options={crops.map((crop) => ({ value: crop.id, label: crop.name }))}
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
        <AccessionTable rows={list.rows} path={PATH} query={query} />
      ) : narrowed ? (
        <EmptyState>
          <p>
            No accession matches. <Link href={PATH}>Show all accessions</Link>, or look with fewer words.
          </p>
        </EmptyState>
      ) : (
        <EmptyState>
          <p className="say">No accession yet. An accession is one variety or population that the bank keeps.</p>
          <div className="flex flex-wrap gap-2">
            <Link href="/collection/accessions/new" className="button">
              Add the first one
            </Link>
            <Link href="/import" className="button">
              Import a spreadsheet
            </Link>
          </div>
        </EmptyState>
      )}
      <Pager href={(page) => listHref(PATH, query, { page })} page={list.page} pages={list.pages} />
    </>
  );
}
