'use client';

import { memo, useDeferredValue, useState } from 'react';
import type { TrayView } from '../_store/bench-view';
import { goToTrayFromList } from './open-tray';
import { isOpenToday, traysLike, traysToday } from './tray-order';
import { TrayRow } from './tray-row';

interface Props {
  trays: readonly TrayView[];
  today: string;
}

/** The round: today's trays in the order in which they stand, and what comes later, folded. */
export const TrayList = memo(function TrayList({ trays, today }: Props) {
  const [typed, setTyped] = useState('');
  const [laterOpen, setLaterOpen] = useState(false);
  // Typing goes before drawing the rows.
  const wanted = useDeferredValue(typed);
  const { today: round, later } = traysToday(trays, today);
  const open = round.filter((view) => isOpenToday(view, today)).length;
  const like = wanted.trim() === '' ? null : traysLike(trays, wanted);
  return (
    <div className="mx-auto grid max-w-3xl gap-3 pb-8">
      <div className="grid gap-2 px-3 pt-3">
        <h1>Bench</h1>
        <p className="say" role="status">
          {roundInWords(round.length, open)}
        </p>
        {trays.length > 0 && (
          <label className="grid gap-1">
            <span className="label">Find a tray by its number, or by variety, crop, place</span>
            <input
              type="search"
              className="field text-lg!"
              inputMode="numeric"
              autoComplete="off"
              enterKeyHint="go"
              value={typed}
              onChange={(event) => setTyped(event.target.value)}
              onKeyDown={(event) => {
                const [only, another] = traysLike(trays, typed);
                if (event.key === 'Enter' && typed.trim() !== '' && only && !another)
                  goToTrayFromList(only.tray.number);
              }}
            />
          </label>
        )}
      </div>
      {like ? (
        <>
          <Rows trays={like} today={today} />
          {like.length === 0 && (
            <p className="px-3">No open tray has ‘{wanted.trim()}’ in its number, variety or place.</p>
          )}
        </>
      ) : (
        <>
          <Rows trays={round} today={today} />
          {later.length > 0 && (
            <details onToggle={(event) => setLaterOpen(event.currentTarget.open)}>
              <summary className="min-h-11 cursor-pointer px-3 py-2.5 font-semibold">
                Later: {later.length} {later.length === 1 ? 'tray' : 'trays'}
              </summary>
              {laterOpen && <Rows trays={later} today={today} />}
            </details>
          )}
        </>
      )}
    </div>
  );
});

function Rows({ trays, today }: Props) {
  if (trays.length === 0) return null;
  return (
    <ul className="@container border-t border-rule">
      {trays.map((view) => (
        <TrayRow key={view.tray.id} view={view} today={today} />
      ))}
    </ul>
  );
}

function roundInWords(round: number, open: number): string {
  if (round === 0) return 'No tray is to be counted today.';
  if (open === 0) return round === 1 ? 'The one tray of today is counted.' : `All ${round} trays of today are counted.`;
  const counted = round - open;
  const said = open === 1 ? '1 tray to count' : `${open} trays to count`;
  return counted === 0 ? `${said}.` : `${said}, ${counted} counted.`;
}
