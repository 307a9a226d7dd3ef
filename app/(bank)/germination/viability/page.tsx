import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Pager } from '@/app/_components/list/pager';
import { PageHead } from '@/app/_components/page-head';
import { listHref } from '@/app/_format/list-href';
import { viabilityListQuery } from '@/lib/schemas/viability-test';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findViabilityTests } from '@/lib/server/queries/viability-tests';
import { ViabilityTable } from './_parts/viability-table';

export const metadata: Metadata = { title: 'Tetrazolium and cut tests' };

const PATH = '/germination/viability';

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function ViabilityTestsPage({ searchParams }: Props) {
  const person = await requirePerson('visitor');
  const list = await findViabilityTests(viabilityListQuery.parse(await searchParams));
  const mayRecord = mayActAs(person, 'volunteer');
  return (
    <>
      <PageHead
        above={
          <Link href="/germination" className="text-ink-2 underline underline-offset-3">
            Germination
          </Link>
        }
        title="Tetrazolium and cut tests"
        below="Seed shown alive without growing it. These tests do not change a forecast."
      >
        {mayRecord && (
          <Link href={`${PATH}/new`} className="button main">
            Record one
          </Link>
        )}
      </PageHead>
      {list.total === 0 ? (
        <EmptyState>
          <p className="say">No seed was stained or cut yet.</p>
          <p className="max-w-prose">
            It is worth it when seed does not germinate and may be dormant, or when a lot looks empty or eaten.
          </p>
        </EmptyState>
      ) : (
        <ViabilityTable rows={list.rows} caption="Tetrazolium and cut tests, newest first" withLot />
      )}
      <Pager
        page={list.page}
        pages={list.pages}
        href={(page) => listHref(PATH, {}, { page })}
        back="Newer"
        forth="Older"
      />
    </>
  );
}
