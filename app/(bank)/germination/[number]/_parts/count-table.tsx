import Link from 'next/link';
import { ScrollBox } from '@/app/_components/scroll-box';
import { formatDate, formatInstant } from '@/app/_format/figures';
import { trayCountPath } from '@/app/_format/tray-path';
import { daysBetween } from '@/lib/domain/calendar/calendar-date';
import { SEED_CLASSES } from '@/lib/domain/germination/seed-classes';
import type { TrayPage } from '@/lib/server/queries/tray-page';

/** Every count by day and dish: what was taken out, what was left, who counted and when it was sent. */
export function CountTable({ tray, mayWrite }: { tray: TrayPage; mayWrite: boolean }) {
  const days = [...new Set(tray.states.flatMap((state) => state.days.map(({ on }) => on)))].sort();
  if (days.length === 0) return <p className="quiet">Nothing was counted yet.</p>;
  return (
    <ScrollBox label="Counts by day and dish">
      <table className="ledger tight">
        <caption className="sr-only">Counts by day and dish: seeds found and taken out</caption>
        <thead>
          <tr>
            <th scope="col">dish</th>
            {SEED_CLASSES.map((seedClass) => (
              <th scope="col" key={seedClass} className="number">
                {seedClass}
              </th>
            ))}
            <th scope="col" className="number">
              left
            </th>
            <th scope="col">counted by</th>
          </tr>
        </thead>
        {days.map((on) => (
          <Day key={on} on={on} tray={tray} mayWrite={mayWrite} />
        ))}
      </table>
    </ScrollBox>
  );
}

function Day({ on, tray, mayWrite }: { on: string; tray: TrayPage; mayWrite: boolean }) {
  return (
    <tbody>
      <tr>
        <th scope="rowgroup" colSpan={8} className="row-head py-1!">
          {formatDate(on)}, day {daysBetween(tray.setOn, on)}
          {mayWrite && (
            <Link
              href={trayCountPath(tray.number, on)}
              className="ml-4 inline-flex min-h-11 items-center font-normal text-ink underline underline-offset-3"
            >
              Correct<span className="sr-only"> the counts of {formatDate(on)}</span>
            </Link>
          )}
        </th>
      </tr>
      {tray.states.map((state) => (
        <DishRow key={state.dish.id} state={state} on={on} />
      ))}
    </tbody>
  );
}

function DishRow({ state, on }: { state: TrayPage['states'][number]; on: string }) {
  const day = state.days.find((one) => one.on === on);
  const { position, seeds } = state.dish;
  if (!day) {
    return (
      <tr>
        <td className="figures py-1.5!">{position}</td>
        <td colSpan={7} className="quiet py-1.5!">
          not counted
        </td>
      </tr>
    );
  }
  const out = state.days
    .filter((one) => one.on <= on)
    .reduce((sum, { found }) => sum + SEED_CLASSES.reduce((all, seedClass) => all + (found?.[seedClass] ?? 0), 0), 0);
  const last = day.standing.at(-1);
  return (
    <tr>
      <td className="figures py-1.5!">{position}</td>
      {SEED_CLASSES.map((seedClass) => (
        <td key={seedClass} className="number py-1.5!">
          {day.found?.[seedClass] ?? '–'}
        </td>
      ))}
      <td className="number py-1.5!">{seeds - out}</td>
      <td className="py-1.5! text-sm whitespace-nowrap">
        {day.disagree ? <b className="text-madder">counts disagree</b> : last?.byName}
        {last && !day.disagree && <span className="label block">{formatInstant(last.madeAt)}</span>}
      </td>
    </tr>
  );
}
