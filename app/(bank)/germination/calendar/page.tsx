import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import { TrayNames } from '@/app/_components/tray-names';
import { benchPath } from '@/app/_format/bench-path';
import { formatCount, formatDate } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { addDays, type CalendarDate, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { countAgenda } from '@/lib/domain/germination/bench/count-agenda';
import { calendarQuerySchema } from '@/lib/schemas/calendar-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getBank } from '@/lib/server/queries/bank';
import { findCalendarFeeds } from '@/lib/server/queries/calendar-feeds';
import { findTestsComing, type TestComing } from '@/lib/server/queries/tests-coming';
import { findTraysUnderWay, type TrayUnderWay } from '@/lib/server/queries/trays-under-way';
import { today } from '@/lib/server/today';
import { CountGroups } from './_parts/count-groups';
import { OwnCalendars } from './_parts/own-calendars';
import { WeeksGrid } from './_parts/weeks-grid';

export const metadata: Metadata = { title: 'Calendar of counts' };

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

const WEEKS = 4;
const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** What is to be counted on which day of the coming weeks, and which tests fall due. */
export default async function CalendarPage({ searchParams }: Props) {
  const person = await requirePerson('visitor');
  const { from: asked } = calendarQuerySchema.parse(await searchParams);
  const day = today();
  const mayCount = mayActAs(person, 'volunteer');
  const first = asked !== undefined && asked > day ? asked : day;
  const monday = addDays(first, -weekdayOf(first));
  const isAhead = monday > day;
  const stretch = { from: isAhead ? monday : day, until: addDays(monday, 7 * WEEKS - 1) };
  const trays = findTraysUnderWay();
  const agenda = countAgenda(trays, stretch);
  const [tests, bank, feeds] = await Promise.all([
    findTestsComing({ ...stretch, from: isAhead ? monday : addDays(day, 1) }),
    getBank(),
    mayCount ? findCalendarFeeds(person) : [],
  ]);
  const testsByDay = byDay(tests.rows);
  const days = [...new Set([...agenda.days.map(({ on }) => on), ...testsByDay.keys()])].sort();
  const toClose = trays.filter((tray) => tray.toClose);
  return (
    <>
      <PageHead
        above={<Link href="/germination">Germination</Link>}
        title="Calendar of counts"
        below={`${formatDate(stretch.from)} to ${formatDate(stretch.until)}`}
      >
        {mayCount && trays.length > 0 && (
          <a href={benchPath()} className="button main">
            Count at the bench
          </a>
        )}
      </PageHead>
      {trays.length === 0 && (
        <EmptyState>
          <p>
            No tray is under way, so there is nothing to count. Tests that fall due are listed under{' '}
            <Link href="/germination">Germination</Link>.
          </p>
        </EmptyState>
      )}
      <WeeksGrid
        agenda={agenda}
        monday={monday}
        weeks={WEEKS}
        today={day}
        testsDue={new Map([...testsByDay].map(([on, rows]) => [on, rows.length]))}
      />
      {agenda.late.length > 0 && (
        <section className="sheet scroll-mt-4 p-0!" id="late" aria-labelledby="late-title">
          <h2 id="late-title" className="border-b border-rule px-5 py-3 text-madder">
            Late: count first
          </h2>
          <CountGroups groups={agenda.late} atBench={mayCount} />
        </section>
      )}
      {toClose.length > 0 && <ToClose trays={toClose} />}
      {days.map((on) => (
        <section key={on} id={`day-${on}`} className="sheet scroll-mt-4 p-0!" aria-labelledby={`title-${on}`}>
          <h2 id={`title-${on}`} className="border-b border-rule px-5 py-3">
            {WEEKDAYS[weekdayOf(on)]} <span className="font-normal">{formatDate(on)}</span>
            {on === day && ', today'}
          </h2>
          <CountGroups
            groups={agenda.days.find((one) => one.on === on)?.groups ?? []}
            atBench={mayCount && on === day}
          />
          <TestsFallingDue tests={testsByDay.get(on) ?? []} />
        </section>
      ))}
      {days.length === 0 && trays.length > 0 && (
        <p className="sheet quiet">Nothing {agenda.late.length > 0 ? 'else ' : ''}is to be counted in these weeks.</p>
      )}
      {tests.total > tests.rows.length && (
        <p className="quiet">
          Of {formatCount(tests.total)} tests that fall due in these weeks the first {formatCount(tests.rows.length)}{' '}
          are shown.
        </p>
      )}
      <nav aria-label="Other weeks" className="no-print flex flex-wrap gap-2">
        {isAhead && (
          <Link href={weeksHref(addDays(monday, -7 * WEEKS), day)} rel="prev" className="button">
            Earlier weeks
          </Link>
        )}
        <Link href={weeksHref(addDays(monday, 7 * WEEKS), day)} rel="next" className="button">
          Later weeks
        </Link>
      </nav>
      {mayCount && <OwnCalendars feeds={feeds} bankAddress={bank.address} />}
    </>
  );
}

/** Monday is 0; 1970-01-01 was a Thursday. */
const weekdayOf = (day: CalendarDate): number => (((toEpochDay(day) + 3) % 7) + 7) % 7;

const weeksHref = (from: CalendarDate, today: CalendarDate) =>
  from > today ? `/germination/calendar?from=${from}` : '/germination/calendar';

function byDay(tests: readonly TestComing[]): Map<CalendarDate, TestComing[]> {
  const days = new Map<CalendarDate, TestComing[]>();
  for (const test of tests) {
    const rows = days.get(test.testDueOn);
    if (rows) rows.push(test);
    else days.set(test.testDueOn, [test]);
  }
  return days;
}

function ToClose({ trays }: { trays: readonly TrayUnderWay[] }) {
  return (
    <section className="sheet" aria-labelledby="to-close">
      <h2 id="to-close">Ready to close</h2>
      <p className="quiet">Every seed of these is classed.</p>
      <TrayNames trays={trays} colour="text-ink" className="mt-2" />
    </section>
  );
}

function TestsFallingDue({ tests }: { tests: readonly TestComing[] }) {
  if (tests.length === 0) return null;
  return (
    <div>
      <p className="label px-5 pt-3">tests that fall due</p>
      <ul>
        {tests.map((test) => (
          <li key={test.lotNumber}>
            <Link
              href={lotPath(test.lotNumber)}
              prefetch={false}
              className="grid min-h-11 content-center px-5 py-2 text-ink no-underline hover:bg-sunk"
            >
              <span>
                <span className="figures">{test.lotNumber}</span> {test.accessionName}{' '}
                <span className="quiet">{test.cropName}</span>
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}
