import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Cautions } from '@/app/_components/cautions';
import { History } from '@/app/_components/history';
import { PageHead } from '@/app/_components/page-head';
import { formatDate } from '@/app/_format/figures';
import { lotPath, viabilityTestPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { packetPath } from '@/app/_format/store-path';
import { VIABILITY_KIND_LABELS } from '@/lib/domain/germination/dormancy/viability-kinds';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getViabilityTest, type ViabilityTestDetail } from '@/lib/server/queries/viability-test-detail';
import { today } from '@/lib/server/today';
import { TreatedSeed } from '../../_parts/bench-advice';
import { VersionsOfTest } from '../../_parts/versions-of-test';
import { ViabilityFindings } from '../_parts/viability-findings';
import { seedInWords } from '../_parts/viability-words';

interface Props {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Viability test ${readParameter((await params).number)}` };
}

export default async function ViabilityTestPage({ params }: Props) {
  const person = await requirePerson('visitor');
  const test = await getViabilityTest(readParameter((await params).number));
  if (!test) notFound();
  const kind = VIABILITY_KIND_LABELS[test.kind];
  return (
    <>
      <PageHead
        above={
          <>
            {test.crop.name} · <i>{test.crop.scientificName}</i> · lot{' '}
            <Link href={lotPath(test.lot.number)} className="figures text-ink underline underline-offset-3">
              {test.lot.number}
            </Link>
          </>
        }
        title={
          <>
            {test.lot.accessionName} <span className="figures font-medium">{test.number}</span>
          </>
        }
        below={`${kind[0]?.toUpperCase()}${kind.slice(1)} of ${formatDate(test.testedOn)}`}
      >
        {mayActAs(person, 'volunteer') && test.correctedByNumber === null && (
          <Link href={`${viabilityTestPath(test.number)}/correct`} className="button">
            Correct this test
          </Link>
        )}
      </PageHead>
      <VersionsOfTest test={test} path={viabilityTestPath} />
      <ViabilityFindings test={test} today={today()} />
      <div className="grid items-start gap-6 lg:grid-cols-2">
        <AsItWasDone test={test} />
        <Cautions keys={['viability-sample-is-spent', ...(test.kind === 'tetrazolium' ? ['tetrazolium'] : [])]} />
      </div>
      <History lines={test.history} />
    </>
  );
}

function AsItWasDone({ test }: { test: ViabilityTestDetail }) {
  return (
    <section className="sheet grid gap-3" aria-labelledby="done-title">
      <h2 id="done-title">As it was done</h2>
      <dl className="grid grid-cols-[auto_1fr] gap-x-4 gap-y-1.5">
        <dt className="label pt-0.5">Method</dt>
        <dd className="wrap-anywhere">{test.method ?? <span className="quiet">not noted</span>}</dd>
        <dt className="label pt-0.5">Packet</dt>
        <dd>
          {test.packet ? (
            <Link href={packetPath(test.packet.number)} className="figures text-ink underline underline-offset-3">
              {test.packet.number}
            </Link>
          ) : (
            <span className="quiet">none</span>
          )}
        </dd>
        <dt className="label pt-0.5">Seed</dt>
        <dd>{seedInWords(test)}</dd>
        {test.notes && (
          <>
            <dt className="label pt-0.5">Notes</dt>
            <dd className="wrap-anywhere whitespace-pre-line">{test.notes}</dd>
          </>
        )}
      </dl>
      {test.lot.treatment && <TreatedSeed treatment={test.lot.treatment} />}
    </section>
  );
}
