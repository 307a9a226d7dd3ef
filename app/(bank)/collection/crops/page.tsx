import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Filter, FilterBar } from '@/app/_components/list/filter-bar';
import { Pager } from '@/app/_components/list/pager';
import { SortHeader } from '@/app/_components/list/sort-header';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { cropPath } from '@/app/_format/links';
import { listHref } from '@/app/_format/list-href';
import { cropListQuery } from '@/lib/schemas/list-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findCrops, findFamilies } from '@/lib/server/queries/crops';
import { CollectionTabs } from '../_parts/collection-tabs';

export const metadata: Metadata = { title: 'Crops' };

const PATH = '/collection/crops';
const SORTS = [
  ['name', 'by name'],
  ['scientific', 'by scientific name'],
  ['family', 'by family'],
  ['-accessions', 'most accessions first'],
] as const;

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function CropsPage({ searchParams }: Props) {
  const person = await requirePerson('visitor');
  const query = cropListQuery.parse(await searchParams);
  const [list, families] = await Promise.all([findCrops(query), findFamilies()]);
  const narrowed = query.q !== '' || query.family !== '';
  const head = { path: PATH, query };
  return (
    <>
      <PageHead
        title="Collection"
        below={`${formatCount(list.total)} ${list.total === 1 ? 'crop' : 'crops'}${narrowed ? ' found' : ' known, kept or not'}`}
      >
        {mayActAs(person, 'steward') && (
          <Link href="/collection/crops/new" className="button">
            Add a crop
          </Link>
        )}
      </PageHead>
      <CollectionTabs here="crops" />
      <FilterBar path={PATH} looksThrough="name or family" query={query} sorts={SORTS} narrowed={narrowed}>
        <Filter
          name="family"
          label="Family"
          value={query.family}
          all="all families"
          options={families.map((family) => ({ value: family, label: family }))}
        />
      </FilterBar>
      {list.rows.length === 0 ? (
        <EmptyState>
          <p>
            No crop matches. <Link href={PATH}>Show all crops</Link>, or{' '}
            <Link href="/collection/crops/new">add the crop</Link> with what you know of it.
          </p>
        </EmptyState>
      ) : (
        <div className="sheet overflow-x-auto p-0!">
          <table className="ledger stacked">
            <thead>
              <tr>
                <SortHeader {...head} sort="name">
                  Crop
                </SortHeader>
                <SortHeader {...head} sort="scientific">
                  Scientific name
                </SortHeader>
                <SortHeader {...head} sort="family">
                  Family
                </SortHeader>
                <th scope="col">Pollination</th>
                <th scope="col">Life cycle</th>
                <SortHeader {...head} sort="accessions" number descendingFirst>
                  Accessions
                </SortHeader>
              </tr>
            </thead>
            <tbody>
              {list.rows.map((crop) => (
                <tr key={crop.id}>
                  <th scope="row" className="row-head">
                    <Link
                      href={cropPath(crop.id)}
                      className="wrap-anywhere font-bold text-ink underline decoration-rule underline-offset-3 hover:decoration-ink"
                    >
                      {crop.name}
                    </Link>
                    {/* On a phone, in place of a column of its own. */}
                    <i className="block font-normal md:hidden">{crop.scientificName}</i>
                  </th>
                  <td className="max-md:hidden!" data-label="scientific name">
                    <i>{crop.scientificName}</i>
                  </td>
                  <td data-label="family">{crop.family}</td>
                  <td data-label="pollination">{crop.pollination}</td>
                  <td data-label="life cycle">{crop.lifeCycle}</td>
                  <td className="number" data-label="accessions">
                    {crop.accessions === 0 ? (
                      '–'
                    ) : (
                      <Link href={listHref('/collection', {}, { crop: crop.id })} className="text-ink underline">
                        {formatCount(crop.accessions)}
                        <span className="sr-only"> of {crop.name}</span>
                      </Link>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <Pager href={(page) => listHref(PATH, query, { page })} page={list.page} pages={list.pages} />
    </>
  );
}
