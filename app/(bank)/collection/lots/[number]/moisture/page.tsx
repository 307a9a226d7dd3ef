import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { lotPath, moisturePath } from '@/app/_format/links';
import { formatMoisture } from '@/app/_format/moisture';
import { readParameter } from '@/app/_format/read-parameter';
import { DRYING_AIR } from '@/lib/domain/moisture/drying-target';
import { SEALING_LIMIT_PERCENT } from '@/lib/domain/moisture/sealing-warning';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getLotMoisture, type LotMoisture } from '@/lib/server/queries/lot-moisture';
import { type MoistureLimit, MoisturePicture } from './_parts/moisture-picture';
import { MoistureTests, PacketMoistures } from './_parts/moisture-tests';
import { SealDoubts } from './_parts/seal-doubts';
import { trustInWords } from './_parts/test-words';

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<{ recorded?: string | string[] }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Moisture of ${readParameter((await params).number)}` };
}

export default async function LotMoisturePage({ params, searchParams }: Props) {
  const person = await requirePerson('visitor');
  const lot = await getLotMoisture(readParameter((await params).number));
  if (!lot) notFound();
  const { recorded } = await searchParams;
  const mayRecord = mayActAs(person, 'volunteer');
  const newPath = `${moisturePath(lot.number)}/new`;
  const justRecorded = lot.tests.find(({ number }) => number === recorded);
  return (
    <>
      <PageHead
        above={
          <Link href={lotPath(lot.number)} className="text-ink-2 underline underline-offset-3">
            {lot.accessionName} {lot.number}
          </Link>
        }
        title="Moisture"
        below="What was measured, and what each packet is reckoned at."
      >
        {mayRecord && (
          <>
            <Link href={`/stores/drying/new?lot=${encodeURIComponent(lot.number)}`} className="button">
              Dry it
            </Link>
            <Link href={newPath} className="button main">
              Record a moisture test
            </Link>
          </>
        )}
      </PageHead>
      {justRecorded && (
        <Notice kind={justRecorded.oven?.verdict === 'repeat' ? 'caution' : 'done'}>
          <b>
            {justRecorded.number}: {formatMoisture(justRecorded.moisturePercent)}.
          </b>{' '}
          {trustInWords(justRecorded)}
        </Notice>
      )}
      <SealDoubts packets={lot.packets} mayRecord={mayRecord} />
      {lot.history && (
        <section className="sheet grid gap-3" aria-label="Moisture through time">
          <MoisturePicture history={lot.history} limits={limitsOf(lot)} />
        </section>
      )}
      <p className="max-w-prose">{targetInWords(lot)}</p>
      <PacketMoistures packets={lot.packets} />
      {lot.tests.length === 0 ? (
        <EmptyState>
          <p className="say">The moisture of this lot was never measured.</p>
          {mayRecord && (
            <Link href={newPath} className="button main">
              Record the first test
            </Link>
          )}
        </EmptyState>
      ) : (
        <MoistureTests tests={lot.tests} newPath={newPath} mayRecord={mayRecord} />
      )}
    </>
  );
}

function limitsOf({ target }: LotMoisture): MoistureLimit[] {
  const most: MoistureLimit = {
    percent: SEALING_LIMIT_PERCENT,
    label: `at most ${SEALING_LIMIT_PERCENT} % to seal`,
    kind: 'most',
  };
  if (!target?.ok) return [most];
  const { moisturePercent, lowestPercent } = target;
  const wanted: MoistureLimit = {
    percent: moisturePercent,
    label: `dry to ${formatMoisture(moisturePercent)}`,
    kind: 'target',
  };
  return [most, wanted, { percent: lowestPercent, label: 'drier does not help', kind: 'least' }];
}

function targetInWords({ target, crop }: LotMoisture): string {
  const most = `At most ${SEALING_LIMIT_PERCENT} % for sealing (common practice).`;
  if (!target) return `${most} ${crop.name} has no longevity constants, so no moisture to dry it to is worked out.`;
  if (!target.ok) return target.reason;
  const { relativeHumidity, temperatureC } = DRYING_AIR;
  return `Dry ${crop.name.toLowerCase()} to about ${formatMoisture(target.moisturePercent)}: at rest in air of ${relativeHumidity * 100} % at ${temperatureC} °C, within the genebank standard (equation from memory). Below ${formatMoisture(target.lowestPercent)} drying no longer lengthens life. ${most}`;
}
