import clsx from 'clsx';
import type { Bench, BenchView } from '../_store/bench-view';
import { linkInWords, notKeptInWords } from './link-words';

interface Props {
  bench: Bench;
  view: BenchView;
  /** over a tray: nothing that needs nobody, so that the dish has the room */
  short: boolean;
  /** a newer Hilum lies ready; calling it loads the page anew */
  onNewVersion: (() => void) | null;
}

/** How it stands with the server, and what needs somebody: always words, above everything. */
export function LinkStrip({ bench, view, short, onNewVersion }: Props) {
  const { said, quiet } = linkInWords(view);
  const notKept = view.notKept && notKeptInWords(view.notKept);
  const signedOut = view.link === 'sign-in-needed';
  return (
    <div className="grid text-sm">
      <div
        className={clsx(
          'flex flex-wrap items-center justify-between gap-x-3 border-b px-3',
          quiet ? 'border-rule bg-sunk' : 'border-ochre bg-ochre-soft',
          short && quiet && 'sr-only',
        )}
      >
        <p role="status" className="py-1" data-link={view.link}>
          {said}
        </p>
        {signedOut ? (
          <a href="/sign-in?then=/bench" className="min-h-11 content-center font-semibold underline">
            Sign in and send
          </a>
        ) : quiet || short ? null : (
          <button type="button" className="min-h-11 font-semibold underline" onClick={() => bench.tryNow()}>
            Try now
          </button>
        )}
      </div>
      {notKept && (
        <p role="alert" className="border-b border-madder bg-madder-soft px-3 py-1.5">
          <b>{notKept.first}</b> {notKept.rest}
        </p>
      )}
      {onNewVersion && (
        <p className="flex flex-wrap items-center justify-between gap-x-3 border-b border-indigo bg-indigo-soft px-3">
          A newer Hilum is ready.
          <button type="button" className="min-h-11 font-semibold underline" onClick={onNewVersion}>
            Load it
          </button>
        </p>
      )}
      {view.refused.length > 0 && (
        <section aria-label="Not taken" className="border-b border-madder bg-madder-soft px-3 py-1.5">
          <ul className="grid gap-1">
            {view.refused.map((entry) => (
              <li key={entry.id} className="flex flex-wrap items-center justify-between gap-x-3">
                <span className="min-w-0 break-words">
                  <b className="figures">{entry.trayNumber}</b>, {entry.what}: not taken. {entry.message}
                </span>
                <button
                  type="button"
                  className="min-h-11 font-semibold underline"
                  aria-label={`Let go: ${entry.trayNumber}, ${entry.what}`}
                  onClick={() => bench.letGo(entry.id)}
                >
                  Let go
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
