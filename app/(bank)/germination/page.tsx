import type { Metadata } from 'next';
import Link from 'next/link';
import { PageHead } from '@/app/_components/page-head';
import { germinationQuerySchema } from '@/lib/schemas/germination-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findGerminationTests, findTestedCrops, findTestsDueOrComing } from '@/lib/server/queries/germination-tests';
import { findGroupsToSet } from '@/lib/server/queries/groups-to-set';
import { findTraysUnderWay } from '@/lib/server/queries/trays-under-way';
import { today } from '@/lib/server/today';
import { GroupsToSet } from './_parts/groups-to-set';
import { RecordedTests } from './_parts/recorded-tests';
import { TestsDue } from './_parts/tests-due';
import { TraysNow } from './_parts/trays-now';

export const metadata: Metadata = { title: 'Germination' };

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function GerminationPage({ searchParams }: Props) {
  const person = await requirePerson('visitor');
  const query = germinationQuerySchema.parse(await searchParams);
  const day = today();
  const [due, tests, crops, groups] = await Promise.all([
    findTestsDueOrComing({ today: day, page: query.due }),
    findGerminationTests({ cropId: query.crop, text: query.q, page: query.page }),
    findTestedCrops(),
    findGroupsToSet(day),
  ]);
  const mayRecord = mayActAs(person, 'volunteer');
  return (
    <>
      <PageHead title="Germination" below={inOneSentence(due.dueNow, due.total - due.dueNow)}>
        <Link href="/germination/calendar" className="button">
          Calendar
        </Link>
        {mayRecord && (
          <>
            <Link href="/germination/plan" className="button main">
              Plan tests
            </Link>
            <Link href="/germination/new" className="button">
              Record a finished test
            </Link>
          </>
        )}
      </PageHead>
      <TraysNow trays={findTraysUnderWay()} today={day} mayCount={mayRecord} />
      <GroupsToSet all={groups} />
      <TestsDue due={due} query={query} today={day} mayRecord={mayRecord} />
      <RecordedTests tests={tests} crops={crops} query={query} />
      <nav aria-label="More about tests" className="flex flex-wrap gap-x-6">
        <Link href="/germination/report" className="inline-flex min-h-11 items-center">
          Report of germination tests
        </Link>
        <Link href="/germination/viability" className="inline-flex min-h-11 items-center">
          Tetrazolium and cut tests
        </Link>
      </nav>
    </>
  );
}

function inOneSentence(dueNow: number, coming: number): string {
  const now = dueNow === 0 ? 'No test is due today' : dueNow === 1 ? 'One test is due' : `${dueNow} tests are due`;
  if (coming === 0) return `${now}.`;
  return `${now}; ${coming} more ${coming === 1 ? 'falls' : 'fall'} due within two months.`;
}
