import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Caption } from '@/app/_components/caption';
import { History } from '@/app/_components/history';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatDate } from '@/app/_format/figures';
import { lotPath, testPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { certificatePath, trayPath } from '@/app/_format/tray-path';
import { daysBetween } from '@/lib/domain/calendar/calendar-date';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { type GerminationTestDetail, getGerminationTest } from '@/lib/server/queries/germination-test-detail';
import { getTrayPage, type TrayPage } from '@/lib/server/queries/tray-page';
import { whatWasLearnt } from '@/lib/server/queries/what-was-learnt';
import { TreatedSeed } from '../_parts/bench-advice';
import { ReplicatesShown } from '../_parts/replicates-shown';
import { TestFindings } from '../_parts/test-findings';
import { VersionsOfTest } from '../_parts/versions-of-test';
import { DormantAdvice } from './_parts/dormant-advice';
import { EarlierTests } from './_parts/earlier-tests';
import { LearntPart } from './_parts/learnt-part';
import { SeriesPart } from './_parts/series-part';
import { TimeCoursePart } from './_parts/time-course-part';
import { TrayView } from './_parts/tray-view';

interface Props {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Germination test ${readParameter((await params).number)}` };
}

/** A finished test; while there is none, the tray that becomes one. */
export default async function GerminationTestPage({ params }: Props) {
  const person = await requirePerson('visitor');
  const number = readParameter((await params).number);
  const mayRecord = mayActAs(person, 'volunteer');
  const test = await getGerminationTest(number);
  const tray = await getTrayPage(test ? (test.tray?.number ?? '') : number);
  if (!test) {
    if (!tray) notFound();
    return <TrayView tray={tray} mayWrite={mayRecord} />;
  }
  const learnt = await whatWasLearnt(test.number);
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
        below={`Germination test, ${formatDate(test.setOn)} to ${formatDate(test.finishedOn)} (${daysInWords(test)})`}
      >
        <Link href={certificatePath(test.number)} className="button">
          Certificate
        </Link>
        {tray && (
          <Link href={trayPath(tray.number)} className="button">
            Counts by day
          </Link>
        )}
        {mayRecord && test.correctedByNumber === null && (
          <Link href={`${testPath(test.number)}/correct`} className="button">
            Correct this test
          </Link>
        )}
      </PageHead>
      <VersionsOfTest test={test} path={testPath} />
      {tray && tray.test?.number === test.number && <TrayStanding tray={tray} />}
      <TestFindings test={test} />
      <DormantAdvice test={test} trayNumber={tray?.number ?? null} mayRecord={mayRecord} />
      {tray && test.correctedByNumber === null && <SeriesPart seriesId={tray.seriesId} mayWrite={mayRecord} />}
      {learnt && <LearntPart learnt={learnt} testNumber={test.number} />}
      <section className="sheet grid gap-4" aria-labelledby="replicates-title">
        <h2 id="replicates-title">Replicates</h2>
        <ReplicatesShown replicates={test.replicates} />
      </section>
      {tray && tray.test?.number === test.number && tray.status === 'closed' && tray.late.length === 0 && (
        <TimeCoursePart course={tray.course} prechillDays={tray.prechillDays} soFar={false} />
      )}
      <EarlierTests test={test} />
      <div className="grid items-start gap-6 lg:grid-cols-2">
        <AsItWasDone test={test} />
        <NextTest test={test} mayRecord={mayRecord} />
      </div>
      <History lines={test.history} />
    </>
  );
}

/** Whether its tray says more by now. */
function TrayStanding({ tray }: { tray: TrayPage }) {
  if (tray.status === 'open') {
    return (
      <Notice kind="caution">
        <b>Its tray is open again.</b> This test speaks for the lot until{' '}
        <Link href={trayPath(tray.number)}>the tray</Link> is closed again; if anything has changed by then, it is
        corrected.
      </Notice>
    );
  }
  if (tray.late.length === 0) return null;
  return (
    <Notice kind="caution">
      <b>{tray.late.length === 1 ? 'A count came' : `${tray.late.length} counts came`} after the tray was closed</b> and{' '}
      {tray.late.length === 1 ? 'is' : 'are'} not in this result. <Link href={trayPath(tray.number)}>See the tray</Link>
      .
    </Notice>
  );
}

function daysInWords({ setOn, finishedOn }: GerminationTestDetail): string {
  const days = daysBetween(setOn, finishedOn);
  return days === 1 ? '1 day' : `${days} days`;
}

function AsItWasDone({ test }: { test: GerminationTestDetail }) {
  return (
    <section className="sheet grid gap-3" aria-labelledby="done-title">
      <h2 id="done-title">As it was done</h2>
      <dl className="grid grid-cols-[auto_1fr] gap-x-4 gap-y-1.5">
        <dt className="label pt-0.5">Method</dt>
        <dd>{test.method ?? <span className="quiet">not noted</span>}</dd>
        <dt className="label pt-0.5">Packet</dt>
        <dd>
          {test.packet ? <span className="figures">{test.packet.number}</span> : <span className="quiet">none</span>}
        </dd>
        <dt className="label pt-0.5">Seed harvested</dt>
        <dd>{formatDate(test.lot.harvestedOn)}</dd>
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

function NextTest({ test, mayRecord }: { test: GerminationTestDetail; mayRecord: boolean }) {
  const { nextTestDueOn, nextTestReason } = test.lot;
  return (
    <section className="sheet grid gap-3" aria-labelledby="next-title">
      <h2 id="next-title">The lot's next test</h2>
      {nextTestDueOn && <Caption text={`Due **${formatDate(nextTestDueOn)}**.`} />}
      <p>{nextTestReason ?? 'No date is set for this lot.'}</p>
      {mayRecord && (
        <Link
          href={`/germination/new?lot=${encodeURIComponent(test.lot.number)}`}
          className="button justify-self-start"
        >
          Record another test
        </Link>
      )}
    </section>
  );
}
