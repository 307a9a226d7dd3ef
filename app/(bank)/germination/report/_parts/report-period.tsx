import Link from 'next/link';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import type { Period } from '@/lib/schemas/germination-report-query';

interface Props {
  path: string;
  period: Period;
  today: string;
}

/** From when to when: two dates, or one of the usual spans. A plain form, so that the address holds the report. */
export function ReportPeriod({ path, period, today }: Props) {
  const year = Number(today.slice(0, 4));
  const spans: [string, Period][] = [
    ['This year', { from: `${year}-01-01`, to: today }],
    ['Last year', { from: `${year - 1}-01-01`, to: `${year - 1}-12-31` }],
    ['Twelve months', { from: addDays(today, -365), to: today }],
  ];
  return (
    <search className="no-print grid gap-2">
      <form action={path} key={`${period.from} ${period.to}`} className="flex flex-wrap items-end gap-3">
        <label className="grid gap-1">
          <span className="label">Finished from</span>
          <input name="from" type="date" defaultValue={period.from} className="field figures" />
        </label>
        <label className="grid gap-1">
          <span className="label">to</span>
          <input name="to" type="date" defaultValue={period.to} className="field figures" />
        </label>
        <button type="submit" className="button">
          Show
        </button>
      </form>
      <ul className="flex flex-wrap gap-x-5">
        {spans.map(([name, { from, to }]) => (
          <li key={name}>
            <Link
              href={`${path}?from=${from}&to=${to}`}
              className="inline-flex min-h-11 items-center"
              aria-current={from === period.from && to === period.to ? 'page' : undefined}
            >
              {name}
            </Link>
          </li>
        ))}
      </ul>
    </search>
  );
}
