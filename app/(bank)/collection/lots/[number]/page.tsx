import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { JudgementMark } from '@/app/_components/judgement-mark';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { Sentence } from '@/app/_components/sentence';
import { SharedSeed } from '@/app/_components/shared-seed';
import { TestsUnderWay } from '@/app/_components/tests-under-way';
import { formatCount, formatDate, formatGrams, formatPercent, formatPercentFigure } from '@/app/_format/figures';
import { accessionPath, cropPath, lotPath, setTestPath } from '@/app/_format/links';
import { moistureSourceWords } from '@/app/_format/moisture';
import { readParameter } from '@/app/_format/read-parameter';
import { packetPath } from '@/app/_format/store-path';
import { ISOLATIONS } from '@/lib/domain/pollination/isolation';
import { whatIfSchema } from '@/lib/schemas/what-if';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getLotPage, type LotPage } from '@/lib/server/queries/lot-page';
import { findStock } from '@/lib/server/queries/stock';
import { today } from '@/lib/server/today';
import { ForecastPanel } from './_parts/forecast-panel';
import { LotMoisturePart } from './_parts/lot-moisture';
import { LotPackets } from './_parts/lot-packets';
import { LotTests } from './_parts/lot-tests';
import { LotViabilityTests } from './_parts/lot-viability-tests';
import { StorageHistory } from './_parts/storage-history';

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Lot ${readParameter((await params).number)}` };
}

export default async function LotDetailPage({ params, searchParams }: Props) {
  const person = await requirePerson('visitor');
  const number = readParameter((await params).number);
  const asked = whatIfSchema.safeParse(await searchParams);
  const page = await getLotPage(number, asked.success ? asked.data : {});
  if (!page) notFound();
  const { judgement } = page.evaluated;
  const mayRecord = mayActAs(person, 'volunteer');
  const packets = await findStock({ lotIds: [page.id] });
  const fullest = packets.find(({ id }) => id === page.evaluated.mainPacket?.id);
  return (
    <>
      <PageHead
        above={
          <>
            <Link href={cropPath(page.crop.id)} className="text-ink-2 underline underline-offset-3">
              {page.crop.name}
            </Link>{' '}
            · <i>{page.crop.scientificName}</i> · accession{' '}
            <Link
              href={accessionPath(page.accession.number)}
              className="figures text-ink-2 underline underline-offset-3"
            >
              {page.accession.number}
            </Link>
          </>
        }
        title={
          <>
            {page.accession.name} <span className="figures font-medium whitespace-nowrap">{page.number}</span>
          </>
        }
      >
        {mayRecord && (
          <>
            {fullest && fullest.seeds > 0 && (
              <Link href={`${packetPath(fullest.number)}/take`} className="button">
                Take seed out
              </Link>
            )}
            <Link href={`/germination/new?lot=${encodeURIComponent(page.number)}`} className="button">
              Record a test
            </Link>
            <Link href={setTestPath(page.number)} className="button main">
              Set a test
            </Link>
          </>
        )}
      </PageHead>
      <Envelope page={page} />
      <p className="-mt-3 max-w-prose">
        <Sentence text={judgement.reasons.join(' ')} />
      </p>
      {page.treatment && (
        <Notice kind="caution">
          Treated seed ({page.treatment}): never food or feed. Wear gloves, avoid its dust.
        </Notice>
      )}
      {page.forecast ? (
        <ForecastPanel
          page={page}
          forecast={page.forecast}
          asked={asked.success ? asked.data : {}}
          askedErrors={asked.success ? [] : asked.error.issues.map((issue) => issue.message)}
        />
      ) : (
        <Notice kind="note">
          <b>No forecast</b>: {judgement.forecastRefusal ?? 'nothing is stored'}. Its tests alone tell how it is.
        </Notice>
      )}
      <StorageHistory strips={page.strips} />
      <TestsUnderWay lotIds={[page.id]} />
      <LotTests tests={page.evaluated.tests} lotNumber={page.number} mayRecord={mayRecord} />
      <LotViabilityTests lotId={page.id} lotNumber={page.number} mayRecord={mayRecord} />
      <LotMoisturePart lotNumber={page.number} />
      <LotPackets
        lotNumber={page.number}
        packets={packets}
        forecasts={page.packetForecasts}
        mayChange={mayRecord}
        today={today()}
      />
      <SharedSeed lotIds={[page.id]} />
      <Origin page={page} mayRecord={mayRecord} />
    </>
  );
}

/** What a steward knows from the jar, in one row. */
function Envelope({ page: { evaluated, forecast, placeName } }: { page: LotPage }) {
  const { judgement, seedsLeft } = evaluated;
  const { viabilityNow } = judgement;
  return (
    <dl className="sheet grid grid-cols-2 gap-px p-0! md:grid-cols-[1.3fr_1fr_1fr_1.2fr_1.2fr]">
      <Item label="Now, by forecast">
        {viabilityNow ? (
          <>
            {formatPercent(viabilityNow.median)} alive{' '}
            <span className="quiet text-base font-normal whitespace-nowrap">
              {formatPercentFigure(viabilityNow.lower)}–{formatPercentFigure(viabilityNow.upper)}
            </span>
          </>
        ) : (
          'no forecast'
        )}
      </Item>
      <Item label="Seed left">
        <span className="figures">{formatCount(seedsLeft)}</span>
      </Item>
      <Item label="Moisture">
        {forecast ? (
          <>
            <span className="figures">{forecast.ageing.moisturePercent.toFixed(1)} %</span>
            <span className="quiet block text-sm font-normal">{moistureSourceWords(forecast.ageing.moistureFrom)}</span>
          </>
        ) : (
          '–'
        )}
      </Item>
      <Item label="Where">{placeName ?? 'not known'}</Item>
      <Item label="Judgement">
        <JudgementMark
          action={judgement.action}
          label={
            judgement.action === 'regrow'
              ? `${judgement.rescue ? 'Rescue' : 'Regrow'} in ${judgement.nextSeason}`
              : undefined
          }
        />
      </Item>
    </dl>
  );
}

function Item({ label, children }: { label: string; children: React.ReactNode }) {
  return (
    <div className="border-rule px-4 py-3 md:border-l md:border-dashed md:first:border-0">
      <dt className="label">{label}</dt>
      <dd className="text-lg font-semibold">{children}</dd>
    </div>
  );
}

function Origin({ page, mayRecord }: { page: LotPage; mayRecord: boolean }) {
  const isolation = ISOLATIONS.find(({ key }) => key === page.isolation)?.label ?? page.isolation;
  const facts: [string, string | null][] = [
    ['Harvested', formatDate(page.harvestedOn)],
    ['Isolation', isolation],
    ['Plants harvested', page.plantsHarvested === null ? null : formatCount(page.plantsHarvested)],
    ['Regrowings since the original', String(page.generation)],
    ['Clean weight', page.cleanWeightG === null ? null : formatGrams(page.cleanWeightG)],
    ['Thousand-seed weight', page.thousandSeedWeightG === null ? null : formatGrams(page.thousandSeedWeightG)],
    ['Notes', page.notes],
  ];
  return (
    <section className="grid gap-3" aria-labelledby="origin">
      <div className="flex flex-wrap items-center justify-between gap-3">
        <h2 id="origin">Where it comes from</h2>
        {mayRecord && (
          <Link href={`${lotPath(page.number)}/edit`} className="button no-print">
            Edit the lot
          </Link>
        )}
      </div>
      <dl className="sheet grid gap-x-6 gap-y-2 sm:grid-cols-2">
        {facts
          .filter(([, value]) => value)
          .map(([label, value]) => (
            <div key={label}>
              <dt className="label">{label}</dt>
              <dd className="whitespace-pre-line">{value}</dd>
            </div>
          ))}
      </dl>
    </section>
  );
}
