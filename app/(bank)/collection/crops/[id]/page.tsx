import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Suspense } from 'react';
import { Facts } from '@/app/_components/facts';
import { History } from '@/app/_components/history';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { cropPath } from '@/app/_format/links';
import { listHref } from '@/app/_format/list-href';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getCrop } from '@/lib/server/queries/crops';
import { findHistory } from '@/lib/server/queries/history';
import { BankLearningPart } from './_parts/bank-learning-part';
import { CropFacts } from './_parts/crop-facts';
import { GerminationMethods } from './_parts/germination-methods';
import { LongevityPart } from './_parts/longevity-part';
import { OwnFigures } from './_parts/own-figures';

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  return { title: (await getCrop((await params).id))?.name ?? 'Crop' };
}

export default async function CropPage({ params, searchParams }: Props) {
  const person = await requirePerson('visitor');
  const crop = await getCrop((await params).id);
  if (!crop) notFound();
  const history = await findHistory([{ entity: 'crop', ids: [crop.id] }]);
  const kept = crop._count.accessions;
  const asked = (await searchParams).tests === 'read';
  return (
    <>
      <PageHead
        above={<Link href="/collection/crops">Crops</Link>}
        title={crop.name}
        below={
          <>
            <i>{crop.scientificName}</i> · {crop.family}
          </>
        }
      >
        {mayActAs(person, 'steward') && (
          <Link href={`${cropPath(crop.id)}/edit`} className="button">
            Set the bank's own figures
          </Link>
        )}
      </PageHead>
      <Facts
        facts={[
          ['Pollination', crop.pollination],
          ['Life cycle', crop.lifeCycle],
          ['Seed in storage', crop.storageBehaviour],
          [
            'Accessions here',
            kept === 0 ? (
              'none'
            ) : (
              <Link key="kept" href={listHref('/collection', {}, { crop: crop.id })}>
                {formatCount(kept)}
              </Link>
            ),
          ],
        ]}
      />
      {crop.notes && <p className="max-w-prose whitespace-pre-line">{crop.notes}</p>}
      <OwnFigures crop={crop} />
      <CropFacts facts={crop.facts} />
      <GerminationMethods methods={crop.germinationMethods} />
      <LongevityPart crop={crop} />
      <Suspense>
        <BankLearningPart crop={crop} asked={asked} steward={mayActAs(person, 'steward')} />
      </Suspense>
      <History lines={history} />
    </>
  );
}
