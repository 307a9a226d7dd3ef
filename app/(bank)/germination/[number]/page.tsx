import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Caption } from '@/app/_components/caption';
import { History } from '@/app/_components/history';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatDate } from '@/app/_format/figures';
import { lotPath, testPath } from '@/app/_format/links';
import { daysBetween } from '@/lib/domain/calendar/calendar-date';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { type GerminationTestDetail, getGerminationTest } from '@/lib/server/queries/germination-test-detail';
import { TreatedSeed } from '../_parts/bench-advice';
import { ReplicatesShown } from '../_parts/replicates-shown';
import { TestFindings } from '../_parts/test-findings';

interface Props {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Germination test ${decodeURIComponent((await params).number)}` };
}

export default async function GerminationTestPage({ params }: Props) {
  const person = await requirePerson('visitor');
  const test = await getGerminationTest(decodeURIComponent((await params).number));
  if (!test) notFound();
  const mayRecord = mayActAs(person, 'volunteer');
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
        {mayRecord && test.correctedByNumber === null && (
          <Link href={`${testPath(test.number)}/correct`} className="button">
            Correct this test
          </Link>
        )}
      </PageHead>
      <Corrections test={test} />
      <TestFindings test={test} />
      <section className="sheet grid gap-4" aria-labelledby="replicates-title">
        <h2 id="replicates-title">Replicates</h2>
        <ReplicatesShown replicates={test.replicates} />
      </section>
      <div className="grid items-start gap-6 lg:grid-cols-2">
        <AsItWasDone test={test} />
        <NextTest test={test} mayRecord={mayRecord} />
      </div>
      <History lines={test.history} />
    </>
  );
}

function daysInWords({ setOn, finishedOn }: GerminationTestDetail): string {
  const days = daysBetween(setOn, finishedOn);
  return days === 1 ? '1 day' : `${days} days`;
}

/** Which version of the test this is, and which one speaks. */
function Corrections({ test }: { test: GerminationTestDetail }) {
  if (test.versions.length < 2) return null;
  const last = test.versions.at(-1)?.number ?? test.number;
  const line = (
    <ol className="mt-1 flex flex-wrap gap-x-4">
      {test.versions.map((version, index) => (
        <li key={version.number} className="flex min-h-11 items-center gap-2">
          {version.number === test.number ? (
            <b className="figures">{version.number}</b>
          ) : (
            <Link href={testPath(version.number)} className="figures text-ink underline underline-offset-3">
              {version.number}
            </Link>
          )}
          {index === 0 ? 'as first written' : 'correction'}
        </li>
      ))}
    </ol>
  );
  return test.correctedByNumber ? (
    <Notice kind="caution">
      <b>This test was corrected.</b> It stays as it was written; {last} speaks for the lot.
      {line}
    </Notice>
  ) : (
    <Notice kind="note">
      This is a correction; it speaks for the lot.
      {line}
    </Notice>
  );
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
