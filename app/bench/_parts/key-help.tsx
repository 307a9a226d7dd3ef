import type { Ref } from 'react';
import { KEYS } from './counting-keys';

/** The keys, for whoever counts at a laptop. */
export function KeyHelp({ ref }: { ref: Ref<HTMLDialogElement> }) {
  return (
    <dialog ref={ref} aria-labelledby="keys" className="sheet m-auto max-w-md text-ink backdrop:bg-ink/40">
      <form method="dialog" className="grid gap-3">
        <h2 id="keys">Keys</h2>
        <dl className="grid grid-cols-[auto_1fr] gap-x-4 gap-y-1">
          {KEYS.map(([keys, deed]) => (
            <div key={keys} className="contents">
              <dt className="figures">{keys}</dt>
              <dd>{deed}</dd>
            </div>
          ))}
        </dl>
        <button type="submit" className="button">
          Close
        </button>
      </form>
    </dialog>
  );
}
