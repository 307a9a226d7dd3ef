import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatDate } from '@/app/_format/figures';
import { readParameter } from '@/app/_format/read-parameter';
import { trayPath } from '@/app/_format/tray-path';
import { isCalendarDate } from '@/lib/domain/calendar/calendar-date';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getTrayPage } from '@/lib/server/queries/tray-page';
import { today } from '@/lib/server/today';
import { BenchAdvice } from '../../../_parts/bench-advice';
import { DayForm } from '../../_parts/day-form';

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<{ on?: string | string[] }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Counts of tray ${readParameter((await params).number)}` };
}

/** Counts of one day in a table, as from a paper beside a laptop. */
export default async function WriteCountsPage({ params, searchParams }: Props) {
  await requirePerson('volunteer');
  const tray = await getTrayPage(readParameter((await params).number));
  if (!tray) notFound();
  const asked = (await searchParams).on;
  const on = typeof asked === 'string' && isCalendarDate(asked) && asked <= today() ? asked : today();
  return (
    <>
      <PageHead
        above={
          <Link href={trayPath(tray.number)} className="text-ink underline underline-offset-3">
            Back to {tray.number}
          </Link>
        }
        title={
          <>
            Counts of <span className="figures font-medium">{tray.number}</span>
          </>
        }
        below={`${tray.lot.accessionName}, lot ${tray.lot.number}, set ${formatDate(tray.setOn)}`}
      />
      {tray.status === 'open' ? (
        <>
          <DayForm tray={tray} on={on} today={today()} />
          <BenchAdvice crop={tray.crop} />
        </>
      ) : (
        <Notice kind="caution">
          {tray.number} is {tray.status === 'closed' ? 'closed' : 'given up'}: nothing can be written down.{' '}
          {tray.status === 'closed' && 'Open it again first.'}
        </Notice>
      )}
    </>
  );
}
