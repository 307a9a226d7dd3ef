'use client';

import { useDeferredValue, useEffect, useLayoutEffect, useRef, useState, useSyncExternalStore } from 'react';
import type { Bench, BenchView } from '../_store/bench-view';
import { useNewVersion } from '../_store/new-version';
import { openBench } from '../_store/open-bench';
import { shortDay } from './day-words';
import { LinkStrip } from './link-strip';
import { backToList, goToTray, useOpenTray } from './open-tray';
import { JustDone } from './tray-done';
import { TrayList } from './tray-list';
import { nextTrayNumber } from './tray-order';
import { TrayScreen } from './tray-screen';

/** The bench: the round of trays, or one tray. All of it lives in this page, so that it needs no connection. */
export function BenchScreen() {
  const [bench, setBench] = useState<Bench | null>(null);
  useEffect(() => setBench(openBench()), []);
  return bench ? <OpenBench bench={bench} /> : <Opening />;
}

function OpenBench({ bench }: { bench: Bench }) {
  const view = useSyncExternalStore(bench.subscribe, bench.view, bench.view);
  const onNewVersion = useNewVersion();
  const wanted = useOpenTray();
  // A tap is answered at once, and the tray it leads to is drawn right after, piece by piece.
  const number = useDeferredValue(wanted);
  const [left, setLeft] = useState<string | null>(null);
  const scrolled = useRef(0);
  const open = number === null ? null : (view.trays.find(({ tray }) => tray.number === number) ?? null);

  const openId = open?.tray.id ?? null;
  const [opened, setOpened] = useState({ id: openId, today: view.today });
  if (opened.id !== openId) setOpened({ id: openId, today: view.today });
  const dayHasTurned = openId !== null && opened.id === openId && opened.today !== view.today;

  // The list stands where it was left.
  useEffect(() => {
    if (number !== null) return;
    const note = () => {
      scrolled.current = scrollY;
    };
    addEventListener('scroll', note, { passive: true });
    return () => removeEventListener('scroll', note);
  }, [number]);
  useLayoutEffect(() => {
    if (number === null) scrollTo(0, scrolled.current);
  }, [number]);

  if (view.phase === 'opening') return <Opening />;
  const online = view.link === 'online';
  const justDone = left === null || left === number ? null : view.trays.find(({ tray }) => tray.number === left);
  const done = () => {
    setLeft(number);
    const next = number === null ? null : nextTrayNumber(view.trays, number, view.today);
    if (next === null) backToList();
    else goToTray(next);
  };
  const above = (
    <>
      <LinkStrip bench={bench} view={view} short={open !== null} onNewVersion={onNewVersion} />
      {justDone && <JustDone view={justDone} today={view.today} online={online} />}
      {dayHasTurned && (
        <p role="status" className="border-b border-rule px-3 py-2 font-semibold">
          It is {shortDay(view.today)} now: what you enter counts for this day.
        </p>
      )}
    </>
  );
  return (
    <>
      {wanted !== null && wanted !== number && <OpeningTray number={wanted} />}
      {!open && above}
      <div hidden={number !== null}>
        <ListBehind trays={view.trays} today={view.today} />
        <BelowList view={view} bench={bench} />
      </div>
      {open && (
        <TrayScreen
          // Digits typed before midnight are not gone on with after it.
          key={`${open.tray.id} ${view.today}`}
          bench={bench}
          view={open}
          today={view.today}
          online={online}
          above={above}
          canUndo={view.canUndo}
          onDone={done}
        />
      )}
      {number !== null && !open && <NotHere number={number} view={view} bench={bench} />}
    </>
  );
}

/** The dish under the finger is drawn first, the list behind it after that, and nothing else with it. */
function ListBehind({ trays, today }: { trays: BenchView['trays']; today: string }) {
  return <TrayList trays={useDeferredValue(trays)} today={today} />;
}

/** Over everything, so that nothing has to make room for it. */
function OpeningTray({ number }: { number: string }) {
  return (
    <p role="status" className="fixed inset-x-0 top-0 z-10 bg-ink px-3 py-1 text-paper h-8 contain-strict">
      Opening <span className="figures">{number}</span> …
    </p>
  );
}

function Opening() {
  return (
    <p role="status" className="p-4">
      Opening the bench …
    </p>
  );
}

function BelowList({ view, bench }: { view: BenchView; bench: Bench }) {
  return (
    <div className="mx-auto grid max-w-3xl justify-items-start gap-3 px-3 pb-8 text-sm">
      {view.phase === 'empty' && (
        <>
          <p>Nothing was loaded on this phone yet. Open this page once with a connection; then it works without.</p>
          <button type="button" className="button" onClick={() => bench.tryNow()}>
            Load the trays
          </button>
        </>
      )}
      <p className="quiet">
        {view.personName && `Counting as ${view.personName}. `}
        {view.readAt && `Trays read at ${new Date(view.readAt).toLocaleTimeString('en-GB', { timeStyle: 'short' })}.`}
      </p>
      <a href="/germination" className="inline-block py-2.5 text-leaf underline underline-offset-3">
        Back to Hilum
      </a>
    </div>
  );
}

function NotHere({ number, view, bench }: { number: string; view: BenchView; bench: Bench }) {
  const isFirstLoad = view.phase === 'empty' && view.link === 'online';
  if (isFirstLoad) {
    return (
      <p role="status" className="p-4">
        Loading the trays …
      </p>
    );
  }
  return (
    <div className="mx-auto grid max-w-xl justify-items-start gap-3 p-4">
      <h1>
        <span className="figures">{number}</span> is not open
      </h1>
      <p>No tray of this number is being counted, as far as this phone knows. It may be closed, or not loaded yet.</p>
      <div className="flex flex-wrap gap-2">
        <button type="button" className="button" onClick={() => bench.tryNow()}>
          Look again
        </button>
        <button type="button" className="button" onClick={backToList}>
          All trays
        </button>
        <a className="button" href={`/germination/${encodeURIComponent(number)}`}>
          Its page in Hilum
        </a>
      </div>
    </div>
  );
}
