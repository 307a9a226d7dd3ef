import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { CropFilter, JudgementFilter } from '@/app/_components/list/usual-filters';
import { accessionListQuery } from '@/lib/schemas/list-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findAccessions } from '@/lib/server/queries/accessions';
import { findKeptCrops } from '@/lib/server/queries/crops';
import { AccessionTable } from './_parts/accession-table';
import { CollectionList, NoneMatches } from './_parts/collection-list';

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
    <CollectionList
      here="accessions"
      path={PATH}
      query={query}
      one="accession"
      looksThrough="name, number or crop"
      sorts={SORTS}
      narrowed={narrowed}
      list={list}
      buttons={
        <>
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
        </>
      }
      filters={
        <>
          <CropFilter crops={crops} chosen={query.crop} />
          <JudgementFilter chosen={query.action} />
        </>
      }
      empty={narrowed ? <NoneMatches one="accession" path={PATH} /> : <NoAccessionYet />}
    >
      <AccessionTable rows={list.rows} path={PATH} query={query} />
    </CollectionList>
  );
}

function NoAccessionYet() {
  return (
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
  );
}
