import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Cautions } from '@/app/_components/cautions';
import { Facts } from '@/app/_components/facts';
import { History } from '@/app/_components/history';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Pager } from '@/app/_components/list/pager';
import { PageHead } from '@/app/_components/page-head';
import { readingsInWords, targetInWords } from '@/app/_format/climate';
import { formatCount } from '@/app/_format/figures';
import { listHref } from '@/app/_format/list-href';
import { storageLifePath } from '@/app/_format/storage-life-path';
import { storePath } from '@/app/_format/store-path';
import { storeQuery } from '@/lib/schemas/list-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findHistory } from '@/lib/server/queries/history';
import { findPacketsIn, getLastReadings, getStore } from '@/lib/server/queries/stores';
import { StoredPackets } from './_parts/stored-packets';

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await getStore((await params).id))?.name ?? 'Store' };
}

export default async function StorePage({ params, searchParams }: Props) {
  const person = await requirePerson('visitor');
  const store = await getStore((await params).id);
  if (!store) notFound();
  const { page } = storeQuery.parse(await searchParams);
  const [packets, readings, history] = await Promise.all([
    findPacketsIn(store.id, page),
    getLastReadings(store.id),
    findHistory([{ entity: 'store', ids: [store.id] }]),
  ]);
  const path = storePath(store.id);
  return (
    <>
      <PageHead
        above={
          <>
            <Link href="/stores">Stores</Link>
            {store.parent && (
              <>
                {' › '}
                <Link href={storePath(store.parent.id)}>{store.parent.name}</Link>
              </>
            )}
          </>
        }
        title={store.name}
      >
        <Link href={storageLifePath({ store: store.id })} className="button">
          How long seed keeps here
        </Link>
        {mayActAs(person, 'steward') && (
          <Link href={`${path}/edit`} className="button">
            Change
          </Link>
        )}
      </PageHead>
      <Facts
        facts={[
          ['Kind', store.kind],
          ['Meant to be', targetInWords(store)],
          ['Logged', readingsInWords(readings)],
          ['Packets', formatCount(packets.total)],
        ]}
      />
      {store.notes && <p className="max-w-prose whitespace-pre-line">{store.notes}</p>}
      {store.children.length > 0 && (
        <section className="grid gap-2" aria-labelledby="inside">
          <h2 id="inside">In it</h2>
          <ul>
            {store.children.map((child) => (
              <li key={child.id}>
                <Link href={storePath(child.id)}>{child.name}</Link> <span className="quiet">{child.kind}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section className="grid gap-3" aria-labelledby="packets">
        <h2 id="packets">Packets</h2>
        {packets.rows.length === 0 ? (
          <EmptyState>
            <p>
              No packet with seed lies here. <Link href="/collection/lots/log">Log a cleaned lot</Link> into it, or move
              a packet here from its lot's page.
            </p>
          </EmptyState>
        ) : (
          <StoredPackets rows={packets.rows} />
        )}
        <Pager href={(page) => listHref(path, {}, { page })} page={packets.page} pages={packets.pages} />
      </section>
      {store.targetTemperatureC < 0 && <Cautions keys={['warm-before-opening', 'freezing-moist-seed']} />}
      <History lines={history} />
    </>
  );
}
