import clsx from 'clsx';
import { Flag } from 'lucide-react';
import { MONTH_NAMES } from '@/app/_format/figures';
import { addDays, type CalendarDate, monthOf } from '@/lib/domain/calendar/calendar-date';
import type { CountAgenda } from '@/lib/domain/germination/bench/count-agenda';
import type { TrayUnderWay } from '@/lib/server/queries/trays-under-way';

interface Props {
  agenda: CountAgenda<TrayUnderWay>;
  /** a Monday */
  monday: CalendarDate;
  weeks: number;
  today: CalendarDate;
  /** lots whose test falls due, by day */
  testsDue: ReadonlyMap<CalendarDate, number>;
}

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;
/** More than these are told in the day's list below. */
const MOST_IN_A_DAY = 4;

/** Four weeks at a glance on a screen that is wide enough; the list of days says the same. */
export function WeeksGrid({ agenda, monday, weeks, today, testsDue }: Props) {
  const byDay = new Map(agenda.days.map(({ on, groups }) => [on, groups.flatMap(({ entries }) => entries)]));
  const late = agenda.late.flatMap(({ entries }) => entries).length;
  return (
    <div className="sheet hidden p-0! md:block">
      <table className="w-full table-fixed border-collapse">
        <caption className="sr-only">Counts of {weeks} weeks</caption>
        <thead>
          <tr>
            {WEEKDAYS.map((name) => (
              <th key={name} scope="col" className="label border-b border-rule px-2 py-1.5 text-left font-normal">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: weeks }, (_, week) => (
            <tr key={addDays(monday, 7 * week)}>
              {WEEKDAYS.map((name, weekday) => {
                const day = addDays(monday, 7 * week + weekday);
                return (
                  <DayCell
                    key={name}
                    day={day}
                    today={today}
                    entries={byDay.get(day) ?? []}
                    late={day === today ? late : 0}
                    testsDue={testsDue.get(day) ?? 0}
                  />
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface CellProps {
  day: CalendarDate;
  today: CalendarDate;
  entries: CountAgenda<TrayUnderWay>['days'][number]['groups'][number]['entries'];
  late: number;
  testsDue: number;
}

function DayCell({ day, today, entries, late, testsDue }: CellProps) {
  return (
    <td
      className={clsx(
        'h-24 border-b border-l border-rule align-top first:border-l-0',
        day < today && 'bg-sunk',
        day === today && 'outline-2 -outline-offset-2 outline-leaf',
      )}
    >
      <div className="grid gap-0.5 px-2 py-1 text-sm">
        <DayHead day={day} isToday={day === today} listed={entries.length + testsDue > 0} />
        {late > 0 && (
          <a href="#late" className="leading-6 font-semibold text-madder">
            {late} late
          </a>
        )}
        {entries.slice(0, MOST_IN_A_DAY).map(({ tray, count }) => (
          <span key={tray.number} title={`${tray.number} ${tray.accessionName}, ${tray.cropName}`} className="truncate">
            {count.final && <Flag role="img" aria-label="last count" size={12} className="mr-1 inline" />}
            <span className="figures">{tray.number}</span> {tray.accessionName}
          </span>
        ))}
        {entries.length > MOST_IN_A_DAY && <span className="quiet">and {entries.length - MOST_IN_A_DAY} more</span>}
        {testsDue > 0 && (
          <span className="text-ochre">
            {testsDue} {testsDue === 1 ? 'test due' : 'tests due'}
          </span>
        )}
      </div>
    </td>
  );
}

/** The day's number; where something is listed below, it leads there. */
function DayHead({ day, isToday, listed }: { day: CalendarDate; isToday: boolean; listed: boolean }) {
  const dayOfMonth = Number(day.slice(8));
  const month = dayOfMonth === 1 ? ` ${MONTH_NAMES[monthOf(day) - 1]?.slice(0, 3)}` : '';
  const words = `${dayOfMonth}${month}${isToday ? ' today' : ''}`;
  const className = clsx('figures leading-6', isToday ? 'font-bold text-ink' : 'text-ink-2');
  if (!listed) return <span className={className}>{words}</span>;
  return (
    <a href={`#day-${day}`} className={clsx(className, 'underline underline-offset-3')}>
      {words}
      <span className="sr-only">, to the list of this day</span>
    </a>
  );
}
