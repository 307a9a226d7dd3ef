import Link from 'next/link';
import { TRAY_LABELS_PATH } from '@/app/_components/labels/labels-address';
import { benchPath } from '@/app/_format/bench-path';
import { formatCount } from '@/app/_format/figures';
import { testPath } from '@/app/_format/links';
import { nextCountInWords } from '@/app/_format/next-count-words';
import type { TrayUnderWay } from '@/lib/server/queries/trays-under-way';

interface Props {
  trays: readonly TrayUnderWay[];
  today: string;
  mayCount: boolean;
}

/** Trays listed here; the bench shows all of them. */
const SHOWN = 12;

/** Tests that stand in the incubators: what is to be counted today, late, or to be closed, first. */
export function TraysNow({ trays, today, mayCount }: Props) {
  if (trays.length === 0) return null;
  const sorted = [...trays].sort((a, b) => rank(a, today) - rank(b, today) || (a.next.on < b.next.on ? -1 : 1));
  return (
    <section className="grid gap-3" aria-labelledby="under-way-title">
      <div className="flex flex-wrap items-center justify-between gap-x-6 gap-y-2">
        <h2 id="under-way-title">
          Under way <span className="figures font-normal text-ink-2">{formatCount(trays.length)}</span>
        </h2>
        {mayCount && (
          <div className="flex flex-wrap gap-2">
            <Link href={TRAY_LABELS_PATH} className="button">
              Labels of trays
            </Link>
            {/* A plain address: the bench is an app of its own, which also opens without a connection. */}
            <a href={benchPath()} className="button">
              Count at the bench
            </a>
          </div>
        )}
      </div>
      <ul className="sheet p-0!">
        {sorted.slice(0, SHOWN).map((tray) => (
          <li
            key={tray.id}
            className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1 border-b border-rule px-4 py-2 last:border-0 sm:px-5"
          >
            <Link href={testPath(tray.number)} className="inline-flex min-h-11 flex-wrap items-center gap-x-3 text-ink">
              <span className="figures">{tray.number}</span>
              <span>
                <b>{tray.accessionName}</b> {tray.cropName}
              </span>
            </Link>
            <span className={waits(tray, today) ? 'font-semibold text-ochre' : 'text-ink-2'}>
              {waitsFor(tray, today)}
            </span>
          </li>
        ))}
        {sorted.length > SHOWN && (
          <li className="px-4 py-3 text-ink-2 sm:px-5">
            and {formatCount(sorted.length - SHOWN)} more, counted later: the bench shows all of them.
          </li>
        )}
      </ul>
    </section>
  );
}

const rank = (tray: TrayUnderWay, today: string) => (waits(tray, today) ? 0 : 1);
const waits = (tray: TrayUnderWay, today: string) => tray.toClose || tray.disagreements > 0 || tray.next.on <= today;

function waitsFor({ toClose, disagreements, next }: TrayUnderWay, today: string): string {
  if (disagreements > 0) return 'counts disagree';
  return toClose ? 'all counted: close it' : `count ${nextCountInWords(next, today)}`;
}
