import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Cautions } from '@/app/_components/cautions';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { Tabs } from '@/app/_components/tabs';
import { formatCount } from '@/app/_format/figures';
import { moisturePath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { OvenAdviceList } from '@/app/(bank)/reference/moisture-and-drying/_parts/oven-advice-list';
import { seedWords } from '@/app/(bank)/reference/moisture-and-drying/_parts/seed-words';
import { AIR_METHOD_ERROR_POINTS, moistureMethod } from '@/lib/domain/moisture/moisture-methods';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getLotMoisture, type LotMoisture, type RecordedMoistureTest } from '@/lib/server/queries/lot-moisture';
import { today } from '@/lib/server/today';
import { MoistureTestForm, type MoistureWay } from '../_parts/moisture-test-form';

export const metadata: Metadata = { title: 'Record a moisture test' };

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

const WAYS: { key: MoistureWay; label: string }[] = [
  { key: 'oven', label: 'Oven' },
  { key: 'meter', label: 'Meter' },
  { key: 'air', label: 'Air over the seed' },
];

export default async function NewMoistureTestPage({ params, searchParams }: Props) {
  await requirePerson('volunteer');
  const [lot, query] = await Promise.all([
    params.then(({ number }) => getLotMoisture(readParameter(number))),
    searchParams,
  ]);
  if (!lot) notFound();
  const corrected = lot.tests.find(({ number }) => number === query.corrects) ?? null;
  if (query.corrects !== undefined && !corrected) notFound();
  const way = WAYS.find(({ key }) => key === query.way)?.key ?? (corrected ? wayOf(corrected.method) : 'oven');
  const path = `${moisturePath(lot.number)}/new`;
  const corrects = corrected ? `&corrects=${encodeURIComponent(corrected.number)}` : '';
  return (
    <>
      <PageHead
        above={
          <Link href={moisturePath(lot.number)} className="text-ink-2 underline underline-offset-3">
            Moisture of {lot.accessionName} {lot.number}
          </Link>
        }
        title={corrected ? `Correct ${corrected.number}` : 'Record a moisture test'}
        below={
          corrected
            ? 'The test stays as it was written; what you save here is a new test that takes its place.'
            : 'How was it found?'
        }
      />
      <Tabs
        tabs={WAYS.map(({ key, label }) => ({ key, label, href: `${path}?way=${key}${corrects}` }))}
        here={way}
        called="Ways of finding moisture"
      />
      {corrected?.correctedByNumber ? (
        <Notice kind="caution">
          {corrected.number} has been corrected already. If that is wrong too, correct{' '}
          <Link href={`${path}?corrects=${encodeURIComponent(corrected.correctedByNumber)}`}>
            {corrected.correctedByNumber}
          </Link>
          .
        </Notice>
      ) : (
        <div className="grid items-start gap-6 lg:grid-cols-[minmax(0,1fr)_20rem]">
          <div className="grid min-w-0 gap-4 lg:col-start-2 lg:row-start-1">
            <Cautions keys={cautionKeys(way, lot)} />
            {way === 'air' && <AirNote lot={lot} />}
          </div>
          <div className="grid min-w-0 gap-6 lg:col-start-1 lg:row-start-1">
            {(way !== 'air' || lot.oil) && (
              <MoistureTestForm
                key={way}
                lotNumber={lot.number}
                today={today()}
                way={way}
                packets={packetOptions(lot)}
                {...(corrected ? { correcting: asWritten(corrected) } : {})}
              />
            )}
            {way === 'oven' && <OvenAdviceList crop={lot.crop} />}
          </div>
        </div>
      )}
    </>
  );
}

const wayOf = (method: string): MoistureWay =>
  moistureMethod(method).oven ? 'oven' : method === 'air' ? 'air' : 'meter';

function cautionKeys(way: MoistureWay, { treatment }: LotMoisture): string[] {
  const ofWay = way === 'oven' ? ['oven-heat', 'oven-sample-is-dead', 'dust'] : [];
  return [...ofWay, 'warm-before-opening', ...(treatment ? ['treated-seed'] : [])];
}

/** What the answer rests on, before anybody trusts it. */
function AirNote({ lot: { oil, crop } }: { lot: LotMoisture }) {
  if (!oil) {
    return (
      <Notice kind="caution">
        The oil of {crop.name.toLowerCase()} seed is not known, and without it air tells nothing of moisture. Use the
        oven or a meter, or write the oil with the crop.
      </Notice>
    );
  }
  const { rootMeanSquare, largest } = AIR_METHOD_ERROR_POINTS;
  return (
    <Notice kind="note">
      <p className="max-w-prose">
        Close seed and instrument in a jar at an even temperature until the humidity stands still: hours for small seed,
        days for beans. Its moisture is worked out for {seedWords(crop.name, oil, false)} by an equation that is from
        memory, about {rootMeanSquare.toFixed(1)} points off on the whole and {largest} at worst. For a lot that matters
        use the oven.
      </p>
    </Notice>
  );
}

const packetOptions = ({ packets }: LotMoisture) =>
  [...packets]
    .sort((a, b) => b.seeds - a.seeds)
    .map(({ id, number, seeds, storeName }) => ({
      value: id,
      label: `${number}: ${formatCount(seeds)} seeds${storeName ? ` in ${storeName}` : ''}`,
    }));

const asWritten = ({
  packet,
  correctsNumber,
  correctedByNumber,
  oven,
  seedsUsed,
  standardPoints,
  ...test
}: RecordedMoistureTest) => ({
  ...test,
  packetId: packet?.id ?? null,
});
