import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Fragment, Suspense } from 'react';
import { ClimateMark } from '@/app/_components/climate-mark';
import { PageHead } from '@/app/_components/page-head';
import { formatDateRange } from '@/app/_format/date-range';
import { storePath } from '@/app/_format/store-path';
import { climateQuerySchema } from '@/lib/schemas/climate-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { climateSources } from '@/lib/server/queries/climate-source';
import { getStoreClimate } from '@/lib/server/queries/store-climate';
import { getStore } from '@/lib/server/queries/stores';
import { ClimateControls } from './_parts/climate-controls';
import { ClimatePlot } from './_parts/climate-plot';
import { CostPart } from './_parts/cost-part';
import { OutsidePart } from './_parts/outside-part';
import { SeriesTable } from './_parts/series-table';
import { SourceWords } from './_parts/source-words';

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `${(await getStore((await params).id))?.name ?? 'Store'}: climate` };
}

export default async function StoreClimatePage({ params, searchParams }: Props) {
  await requirePerson('visitor');
  const store = await getStore((await params).id);
  if (!store) notFound();
  const typed = await searchParams;
  const asked = climateQuerySchema.safeParse(typed);
  const page = getStoreClimate(store.id, asked.success ? asked.data : {});
  const source = climateSources().get(store.id);
  // Plain sentences by field: an error object is nothing to hand to a part of the page.
  const errors = Object.fromEntries(
    asked.success ? [] : asked.error.issues.map(({ path, message }) => [String(path[0]), message]),
  );
  const address = {
    tolerance: asked.success ? asked.data.tolerance : undefined,
    humidity: asked.success ? asked.data.humidity : undefined,
  };
  return (
    <>
      <PageHead
        above={
          <>
            <Link href="/stores">Stores</Link>
            {[...store.around, store].map((place) => (
              <Fragment key={place.id}>
                {' › '}
                <Link href={storePath(place.id)}>{place.name}</Link>
              </Fragment>
            ))}
          </>
        }
        title={`${store.name}: climate`}
        below={source && <ClimateMark source={source} />}
      />
      <ClimateControls storeId={store.id} page={page} typed={typed} errors={errors} address={address} />
      <section className="sheet grid gap-4" aria-labelledby="days">
        <h2 id="days">{formatDateRange(page.from, page.to)}</h2>
        <SourceWords storeId={store.id} page={page} />
        <ClimatePlot storeId={store.id} page={page} address={address} />
        <SeriesTable storeId={store.id} page={page} address={address} isAsked={typed.table === 'yes'} />
      </section>
      <OutsidePart storeId={store.id} page={page} address={address} />
      <section className="grid gap-3" aria-labelledby="cost">
        <h2 id="cost">What it cost</h2>
        <Suspense
          key={`${page.from} ${page.to}`}
          fallback={<p className="quiet">Working out what these days cost each lot…</p>}
        >
          <CostPart storeId={store.id} page={page} address={address} />
        </Suspense>
      </section>
    </>
  );
}
