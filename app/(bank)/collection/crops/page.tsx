import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Filter } from '@/app/_components/list/filter-bar';
import { ListHead } from '@/app/_components/list/list-head';
import { RowLink } from '@/app/_components/list/row-link';
import { formatCount } from '@/app/_format/figures';
import { cropPath } from '@/app/_format/links';
import { listHref } from '@/app/_format/list-href';
import { type CropListQuery, cropListQuery } from '@/lib/schemas/list-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { type CropListRow, findCrops, findFamilies } from '@/lib/server/queries/crops';
import { CollectionList } from '../_parts/collection-list';

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
  return (
    <CollectionList
      here="crops"
      path={PATH}
      query={query}
      one="crop"
      all=" known, kept or not"
      looksThrough="name or family"
      sorts={SORTS}
      narrowed={narrowed}
      list={list}
      buttons={
        mayActAs(person, 'steward') && (
          <Link href="/collection/crops/new" className="button">
            Add a crop
          </Link>
        )
      }
      filters={
        <Filter
          name="family"
          label="Family"
          value={query.family}
          all="all families"
          options={families.map((family) => ({ value: family, label: family }))}
        />
      }
      empty={
        <EmptyState>
          <p>
            No crop matches. <Link href={PATH}>Show all crops</Link>, or{' '}
            <Link href="/collection/crops/new">add the crop</Link> with what you know of it.
          </p>
        </EmptyState>
      }
    >
      <CropTable rows={list.rows} query={query} />
    </CollectionList>
  );
}

const COLUMNS = [
  { title: 'Crop', sort: 'name' },
  { title: 'Scientific name', sort: 'scientific' },
  { title: 'Family', sort: 'family' },
  { title: 'Pollination' },
  { title: 'Life cycle' },
  { title: 'Accessions', sort: 'accessions', number: true, descendingFirst: true },
] as const;

function CropTable({ rows, query }: { rows: CropListRow[]; query: CropListQuery }) {
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <ListHead path={PATH} query={query} columns={COLUMNS} />
        <tbody>
          {rows.map((crop) => (
            <tr key={crop.id}>
              <th scope="row" className="row-head">
                <RowLink href={cropPath(crop.id)}>{crop.name}</RowLink>
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
  );
}
