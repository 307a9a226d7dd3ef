import type { Metadata } from 'next';
import Link from 'next/link';
import { Cautions } from '@/app/_components/cautions';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Pager } from '@/app/_components/list/pager';
import { PageHead } from '@/app/_components/page-head';
import { dryingListQuery } from '@/lib/schemas/drying-run';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findDryingRuns } from '@/lib/server/queries/drying-runs';
import { StoresTabs } from '../_parts/stores-tabs';
import { RunTable } from './_parts/run-table';

export const metadata: Metadata = { title: 'Drying' };

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function DryingPage({ searchParams }: Props) {
  const person = await requirePerson('visitor');
  const { page } = dryingListQuery.parse(await searchParams);
  const [running, ended] = await Promise.all([
    findDryingRuns({ ended: false, page: 1 }),
    findDryingRuns({ ended: true, page }),
  ]);
  const mayRecord = mayActAs(person, 'volunteer');
  return (
    <>
      <PageHead title="Drying" below="Seed laid out to dry, and when to stop.">
        {mayRecord && (
          <Link href="/stores/drying/new" className="button main">
            Start drying
          </Link>
        )}
      </PageHead>
      <StoresTabs here="drying" />
      {running.rows.length === 0 ? (
        <EmptyState>
          <p className="say">Nothing is drying now.</p>
          <p>Weigh seed as it dries, and Hilum says when it is dry enough and when the drier can do no more.</p>
        </EmptyState>
      ) : (
        <section className="grid gap-3" aria-labelledby="running">
          <h2 id="running">Drying now</h2>
          <RunTable runs={running.rows} caption="Runs under way, the latest first" />
        </section>
      )}
      {ended.rows.length > 0 && (
        <section className="grid gap-3" aria-labelledby="ended">
          <h2 id="ended">Ended</h2>
          <RunTable ended runs={ended.rows} caption="Runs that have ended, the latest first" />
          <Pager
            page={ended.page}
            pages={ended.pages}
            href={(next) => `/stores/drying?page=${next}`}
            label="Ended runs"
          />
        </section>
      )}
      <Cautions keys={['drying-heat', 'cobalt-silica-gel', 'dust']} />
    </>
  );
}
