import type { Metadata } from 'next';
import Link from 'next/link';
import { Cautions } from '@/app/_components/cautions';
import { ChooseLot } from '@/app/_components/choose-lot';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatCount, formatDate } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { formatMoisture } from '@/app/_format/moisture';
import { DRYING_AIR } from '@/lib/domain/moisture/drying-target';
import { moistureMethod } from '@/lib/domain/moisture/moisture-methods';
import { newDryingRunQuery } from '@/lib/schemas/drying-run';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getLotMoisture, type LotMoisture } from '@/lib/server/queries/lot-moisture';
import { findLotsToTest } from '@/lib/server/queries/lots-for-testing';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { StartForm } from '../_parts/start-form';

export const metadata: Metadata = { title: 'Start drying' };

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function NewDryingRunPage({ searchParams }: Props) {
  await requirePerson('volunteer');
  const query = newDryingRunQuery.parse(await searchParams);
  const [lot, stores] = await Promise.all([query.lot === '' ? null : getLotMoisture(query.lot), findStoreChoices()]);
  if (!lot) {
    return (
      <>
        <PageHead title="Start drying" below="First the lot." />
        <ChooseLot
          action="/stores/drying/new"
          typed={query.lot}
          choices={await findLotsToTest(query.lot)}
          title="Which of these?"
        />
      </>
    );
  }
  return (
    <>
      <PageHead
        above={<Link href="/stores/drying">Drying</Link>}
        title="Start drying"
        below={
          <>
            <b className="text-ink">{lot.accessionName}</b>{' '}
            <Link href={lotPath(lot.number)} className="figures text-ink underline underline-offset-3">
              {lot.number}
            </Link>
            , {lot.crop.name.toLowerCase()}
          </>
        }
      />
      {lot.target && !lot.target.ok && <Notice kind="caution">{lot.target.reason}</Notice>}
      <div className="grid items-start gap-6 lg:grid-cols-[minmax(0,1fr)_20rem]">
        <div className="lg:col-start-2 lg:row-start-1">
          <Cautions keys={['drying-heat', 'cobalt-silica-gel', ...(lot.treatment ? ['treated-seed'] : [])]} />
        </div>
        <StartForm
          lotNumber={lot.number}
          packets={packetOptions(lot)}
          packetId={lot.packets.find(({ number }) => number === query.packet)?.id ?? null}
          tests={testOptions(lot)}
          stores={stores.map(({ id, name }) => ({ value: id, label: name }))}
          target={lot.target?.ok ? lot.target.moisturePercent : null}
          targetHint={targetHint(lot)}
        />
      </div>
    </>
  );
}

const packetOptions = ({ packets }: LotMoisture) =>
  packets.map(({ id, number, seeds }) => ({ value: id, label: `${number}: ${formatCount(seeds)} seeds` }));

const testOptions = ({ tests }: LotMoisture) =>
  tests
    .filter(({ correctedByNumber }) => correctedByNumber === null)
    .map(({ id, number, testedOn, moisturePercent, method }) => ({
      value: id,
      label: `${number}: ${formatMoisture(moisturePercent)}, ${moistureMethod(method).short}, ${formatDate(testedOn)}`,
    }));

function targetHint({ target, crop }: LotMoisture): string {
  if (!target?.ok) return 'Percent of fresh weight. No usual figure is worked out for this crop.';
  const { relativeHumidity, temperatureC } = DRYING_AIR;
  return `Usual for ${crop.name.toLowerCase()}: ${formatMoisture(target.moisturePercent)}, at rest in air of ${relativeHumidity * 100} % at ${temperatureC} °C (genebank standard; equation from memory). Below ${formatMoisture(target.lowestPercent)} drying gains nothing.`;
}
