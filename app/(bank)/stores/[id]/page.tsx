import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Fragment } from 'react';
import { Cautions } from '@/app/_components/cautions';
import { ClimateMark } from '@/app/_components/climate-mark';
import { Facts } from '@/app/_components/facts';
import { History } from '@/app/_components/history';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Pager } from '@/app/_components/list/pager';
import { PageHead } from '@/app/_components/page-head';
import { readingsInWords, targetInWords } from '@/app/_format/climate';
import { formatCount, formatDate } from '@/app/_format/figures';
import { listHref } from '@/app/_format/list-href';
import { storageLifePath } from '@/app/_format/storage-life-path';
import { storePath } from '@/app/_format/store-path';
import { storeQuery } from '@/lib/schemas/list-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { climateSources } from '@/lib/server/queries/climate-source';
import { findHistory } from '@/lib/server/queries/history';
import { findPacketsIn, findStoresIn, getLastReadings, getStore } from '@/lib/server/queries/stores';
import { kindLabel, StoreTree } from '../_parts/store-tree';
import { StorePhases } from './_parts/store-phases';
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
  const [packets, inside, readings, history] = await Promise.all([
    findPacketsIn(store.id, store.packetsInside, page),
    findStoresIn(store.id),
    getLastReadings(store.id),
    findHistory([{ entity: 'store', ids: [store.id] }]),
  ]);
  const path = storePath(store.id);
  const source = climateSources().get(store.id);
  return (
    <>
      <PageHead
        above={
          <>
            <Link href="/stores">Stores</Link>
            {store.around.map((place) => (
              <Fragment key={place.id}>
                {' › '}
                <Link href={storePath(place.id)}>{place.name}</Link>
              </Fragment>
            ))}
          </>
        }
        title={store.name}
      >
        <Link href={storageLifePath({ store: store.id })} className="button">
          How long seed keeps here
        </Link>
        <Link href={`${path}/climate`} className="button">
          Climate
        </Link>
        {mayActAs(person, 'volunteer') && (
          <>
            <Link href={`${path}/readings`} className="button">
              Readings
            </Link>
            <Link href={`/stores/stock-takes?store=${encodeURIComponent(store.id)}`} className="button">
              Stock-take
            </Link>
            <Link href={`/stores/labels?store=${encodeURIComponent(store.id)}`} className="button">
              Labels
            </Link>
            <Link href={`${path}/move`} className="button">
              Move
            </Link>
          </>
        )}
        {mayActAs(person, 'steward') && (
          <Link href={`${path}/edit`} className="button">
            Change
          </Link>
        )}
      </PageHead>
      <Facts
        facts={[
          ['Kind', kindLabel(store.kind)],
          ['Meant to be', `${targetInWords(store)}${store.inheritsTarget ? ', as what it lies in' : ''}`],
          ['Logged', readingsInWords(readings)],
          ['Climate', source && <ClimateMark source={source} />],
          ['Packets', packetsAndRoom(packets.total, store.capacityPackets)],
          ['No longer used since', store.closedOn && formatDate(store.closedOn)],
        ]}
      />
      {store.notes && <p className="max-w-prose whitespace-pre-line">{store.notes}</p>}
      {inside.length > 0 && (
        <section className="grid gap-2" aria-labelledby="inside">
          <h2 id="inside">In it</h2>
          <StoreTree stores={inside} called={`Stores in ${store.name}`} />
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
          <StoredPackets rows={packets.rows} showPlace={inside.length > 0} />
        )}
        <Pager href={(page) => listHref(path, {}, { page })} page={packets.page} pages={packets.pages} />
      </section>
      {store.targetTemperatureC < 0 && <Cautions keys={['warm-before-opening', 'freezing-moist-seed']} />}
      <StorePhases phases={store.phases} />
      <History lines={history} />
    </>
  );
}

function packetsAndRoom(packets: number, capacity: number | null): string {
  return capacity === null ? formatCount(packets) : `${formatCount(packets)}, room for ${formatCount(capacity)}`;
}
