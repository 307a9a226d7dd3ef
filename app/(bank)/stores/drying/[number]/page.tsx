import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Caption } from '@/app/_components/caption';
import { Cautions } from '@/app/_components/cautions';
import { Facts } from '@/app/_components/facts';
import { History } from '@/app/_components/history';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatDate } from '@/app/_format/figures';
import { lotPath, moisturePath } from '@/app/_format/links';
import { formatMoisture } from '@/app/_format/moisture';
import { readParameter } from '@/app/_format/read-parameter';
import { packetPath } from '@/app/_format/store-path';
import { formatOnBalance } from '@/app/(bank)/reference/_parts/on-balance';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { type DryingRunDetail, getDryingRun } from '@/lib/server/queries/drying-runs';
import { today } from '@/lib/server/today';
import { EndForm } from '../_parts/end-form';
import { HintMark } from '../_parts/hint-mark';
import { stopHint } from '../_parts/stop-hint';
import { WeighForm } from '../_parts/weigh-form';
import { WeighingTable } from '../_parts/weighing-table';
import { WeightPicture } from '../_parts/weight-picture';

interface Props {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Drying run ${readParameter((await params).number)}` };
}

export default async function DryingRunPage({ params }: Props) {
  const person = await requirePerson('visitor');
  const run = await getDryingRun(readParameter((await params).number));
  if (!run) notFound();
  const mayRecord = mayActAs(person, 'volunteer');
  const running = run.endedOn === null;
  const hint = stopHint(run);
  return (
    <>
      <PageHead
        above={
          <>
            <Link href="/stores/drying">Drying</Link> · lot{' '}
            <Link href={lotPath(run.lotNumber)} className="figures">
              {run.lotNumber}
            </Link>
          </>
        }
        title={
          <>
            {run.accessionName} <span className="figures font-medium whitespace-nowrap">{run.number}</span>
          </>
        }
        below={`Drying since ${formatDate(run.startedOn)}${run.endedOn ? `, ended ${formatDate(run.endedOn)}` : ''}`}
      />
      {running ? (
        <section className="sheet grid gap-3" aria-label="What to do">
          <div>
            <HintMark hint={hint} />
          </div>
          <Caption text={hint.text} />
        </section>
      ) : (
        <Ended run={run} mayRecord={mayRecord} />
      )}
      <div className="grid items-start gap-6 lg:grid-cols-[minmax(0,1fr)_20rem]">
        {running && mayRecord && (
          <section className="sheet lg:order-last" aria-label="Add a weighing">
            <WeighForm runId={run.id} tareG={run.tareG} />
          </section>
        )}
        <div className="grid min-w-0 gap-6">
          {run.picture && (
            <section className="sheet grid gap-3" aria-label="Weights so far">
              <WeightPicture picture={run.picture} hourZero={run.hourZero} />
            </section>
          )}
          <DryingCautions run={run} />
        </div>
      </div>
      <WeighingTable run={run} mayRecord={mayRecord} />
      <RunFacts run={run} />
      {running && mayRecord && (
        <section className="grid gap-3" aria-labelledby="end">
          <h2 id="end">Take it off</h2>
          <div className="sheet">
            <EndForm runId={run.id} today={today()} stop={hint.kind === 'stop'} />
          </div>
        </section>
      )}
      <Cautions keys={['drying-heat', 'cobalt-silica-gel', ...(run.treatment ? ['treated-seed'] : [])]} />
      <History lines={run.history} />
    </>
  );
}

/** What was reached, and the way to write it with the packet. */
function Ended({ run, mayRecord }: { run: DryingRunDetail; mayRecord: boolean }) {
  const { progress, packetNumber } = run;
  if (!progress.ok) {
    return (
      <Notice kind="caution">
        Ended. Its weighings contradict the moisture at the start, so what it reached is not known.
      </Notice>
    );
  }
  const reached = Number(progress.moistureNowPercent.toFixed(1));
  return (
    <Notice kind="done">
      <p>
        <b>Ended at {formatMoisture(reached)}</b>, {formatMoisture(run.targetMoisturePercent)} was wanted.
      </p>
      {mayRecord && packetNumber && (
        <Link
          href={`${packetPath(packetNumber)}/repack?moisture=${reached}&from=${run.endedOn}`}
          className="button no-print mt-2"
        >
          Pack {packetNumber} at {formatMoisture(reached)}
        </Link>
      )}
      {!packetNumber && <p>Write this moisture when you pack the seed.</p>}
    </Notice>
  );
}

function DryingCautions({ run: { tooFast, progress, lowestPercent } }: { run: DryingRunDetail }) {
  const tooDry = progress.ok && lowestPercent !== null && progress.moistureNowPercent < lowestPercent;
  return (
    <>
      {tooFast && (
        <Notice kind="caution">
          It lost {tooFast.pointsPerHour.toFixed(1)} points of moisture an hour at its fastest;{' '}
          {tooFast.limitPointsPerHour} is the most for this seed (from memory). Dry cooler, or in less moving air: seed
          that dries too fast cracks or dies.
        </Notice>
      )}
      {tooDry && (
        <Notice kind="note">
          Below {formatMoisture(lowestPercent ?? 0)} drying no longer lengthens the life of this seed. Let very dry seed
          take up water in moist air for a day before it is sown.
        </Notice>
      )}
    </>
  );
}

function RunFacts({ run }: { run: DryingRunDetail }) {
  const { progress, stepG, moistureTestNumber } = run;
  return (
    <Facts
      facts={[
        [
          'Moisture at the start',
          <>
            {formatMoisture(run.startMoisturePercent)}{' '}
            {moistureTestNumber ? (
              <Link href={`${moisturePath(run.lotNumber)}#${moistureTestNumber}`} className="font-normal">
                measured, {moistureTestNumber}
              </Link>
            ) : (
              <span className="quiet font-normal">typed</span>
            )}
          </>,
        ],
        ['Dry it to', formatMoisture(run.targetMoisturePercent)],
        ['Stop at', progress.ok ? `${formatOnBalance(progress.targetWeightG + run.tareG, stepG)} with the tray` : null],
        ['Empty tray', formatOnBalance(run.tareG, stepG)],
        ['Packet', run.packetNumber && <Link href={packetPath(run.packetNumber)}>{run.packetNumber}</Link>],
        ['Dried with', run.dryingWith],
        ['Where', run.storeName],
        ['Notes', run.notes],
      ]}
    />
  );
}
