import clsx from 'clsx';
import Link from 'next/link';
import { TrayLink } from '@/app/_components/tray-link';
import { TrayNames } from '@/app/_components/tray-names';
import { benchPath } from '@/app/_format/bench-path';
import { formatCount, formatDate } from '@/app/_format/figures';
import { nextCountInWords } from '@/app/_format/next-count-words';
import { type TrayUnderWay, waitsToBeCounted } from '@/lib/server/queries/trays-under-way';

interface Props {
  /** every open tray, in the order in which they are walked along */
  trays: readonly TrayUnderWay[];
  today: string;
  mayCount: boolean;
}

/** On a phone more would push the rest of Today out of sight; the bench has all of them. */
const MOST_SHOWN = 8;

/** The germination tests under way: what is to be counted today, what waits to be closed or settled. */
export function BenchToday({ trays, today, mayCount }: Props) {
  if (trays.length === 0) return null;
  const due = trays.filter((tray) => waitsToBeCounted(tray, today));
  // A stable sort: of those that are as late, the order of the shelves stays.
  const latestFirst = [...due].sort((one, other) => other.next.daysLate - one.next.daysLate);
  return (
    <section className="sheet p-0!" aria-labelledby="at-the-bench">
      <div className="flex flex-wrap items-center justify-between gap-x-4 gap-y-2 border-b border-rule px-5 py-3">
        <h2 id="at-the-bench">
          To count today <span className="figures font-normal text-ink-2">{formatCount(due.length)}</span>
        </h2>
        <span className="flex flex-wrap items-center gap-x-4 gap-y-2">
          <Link
            href="/germination/calendar"
            className="inline-flex min-h-11 items-center text-leaf underline underline-offset-3"
          >
            Calendar
          </Link>
          {mayCount && (
            <a href={benchPath()} className={clsx('button', due.length > 0 && 'main')}>
              Count at the bench
            </a>
          )}
        </span>
      </div>
      {due.length === 0 ? (
        <p className="quiet px-5 py-4">{nothingToday(trays)}</p>
      ) : (
        <ul>
          {latestFirst.slice(0, MOST_SHOWN).map((tray) => (
            <li key={tray.number} className="border-b border-rule last:border-0">
              <TrayLink number={tray.number} atBench={mayCount} className={ROW}>
                <span>
                  <b>{tray.accessionName}</b> <span className="quiet">{tray.cropName}</span>
                  <span className="figures block text-sm">{tray.number}</span>
                </span>
                <span>
                  <span className={clsx(tray.next.daysLate > 0 && 'font-semibold text-madder')}>
                    {nextCountInWords(tray.next, today)}
                  </span>
                  <span className="quiet block text-sm">
                    {[tray.place, `${tray.remaining} of ${tray.seeds} seeds still there`].filter(Boolean).join(' · ')}
                  </span>
                </span>
              </TrayLink>
            </li>
          ))}
        </ul>
      )}
      {due.length > MOST_SHOWN && (
        <p className="quiet border-t border-rule px-5 py-3">and {formatCount(due.length - MOST_SHOWN)} more</p>
      )}
      <Waiting title="Ready to close" trays={trays.filter(({ toClose }) => toClose)} />
      <Waiting title="Counts disagree" trays={trays.filter(({ disagreements }) => disagreements > 0)} />
    </section>
  );
}

function nothingToday(trays: readonly TrayUnderWay[]): string {
  const [next] = trays
    .filter(({ toClose }) => !toClose)
    .map((tray) => tray.next.on)
    .sort();
  const underWay = `${formatCount(trays.length)} ${trays.length === 1 ? 'tray is' : 'trays are'} under way`;
  return next === undefined ? `${underWay}; nothing is left to count.` : `${underWay}; next count ${formatDate(next)}.`;
}

const ROW = 'grid gap-1 px-5 py-3 text-ink no-underline hover:bg-sunk sm:grid-cols-[16rem_1fr] sm:gap-4';

function Waiting({ title, trays }: { title: string; trays: readonly TrayUnderWay[] }) {
  if (trays.length === 0) return null;
  return (
    <div className="flex flex-wrap items-center gap-x-4 border-t border-rule px-5 py-1.5">
      <h3 className="text-base font-semibold">{title}</h3>
      <TrayNames trays={trays} colour="text-leaf" className="flex flex-wrap gap-x-4" />
    </div>
  );
}
