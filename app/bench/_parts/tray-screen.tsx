'use client';

import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { Bench, TrayView } from '../_store/bench-view';
import { BelowTray } from './below-tray';
import { onCountingKey } from './counting-keys';
import { CountingPanel } from './counting-panel';
import { DishTabs } from './dish-tabs';
import { DishTroubles } from './dish-troubles';
import { keepFocus } from './keep-focus';
import { KeyHelp } from './key-help';
import { SeedDish } from './seed-dish';
import { seedsInDish } from './seeds-in-dish';
import { tallyInWords, tallyOf } from './tally-words';
import { ReadyToClose, StillOpen } from './tray-done';
import { TrayHead } from './tray-head';
import { isDoneWith } from './tray-progress';
import { useCounting } from './use-counting';
import { useWakeLock } from './wake-lock';

interface Props {
  bench: Bench;
  view: TrayView;
  today: string;
  online: boolean;
  /** what stands over the tray: the link, the tray that was just left */
  above: ReactNode;
  canUndo: boolean;
  /** goes on to the next tray of the round */
  onDone: () => void;
}

/** One tray under the hands: its dishes, what is found in them, and all that is counted with. */
export function TrayScreen({ bench, view, today, online, above, canUndo, onDone }: Props) {
  const { tray, dishes } = view;
  const counting = useCounting(bench, view, today);
  const { state, index, on, onWords } = counting;
  const [leaving, setLeaving] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  const notes = useRef<HTMLElement>(null);
  const help = useRef<HTMLDialogElement>(null);
  useWakeLock();
  useEffect(() => {
    heading.current?.focus({ preventScroll: true });
    scrollTo(0, 0);
  }, []);

  const isCounted = (dish: (typeof dishes)[number]) => dish.days.some((day) => day.on === on);
  const done = isDoneWith(view, on);
  // A dish that was emptied on an earlier day has nothing to count; when no dish has, this was the last.
  const following = done
    ? -1
    : dishes.findIndex((dish, place) => place > index && (dish.remaining !== 0 || isCounted(dish)));
  const openDish = (dish: number) => {
    setLeaving(false);
    counting.openDish(dish);
  };
  const next = () => {
    if (following >= 0) openDish(following);
    else if (done) onDone();
    else setLeaving(true);
  };
  const keys = {
    ...counting,
    next,
    dishAfter: () => openDish(Math.min(dishes.length - 1, index + 1)),
    dishBefore: () => openDish(Math.max(0, index - 1)),
    help: () => help.current?.showModal(),
  };
  const said = tallyInWords(tallyOf([state], on), onWords);

  return (
    <section
      aria-labelledby="tray"
      tabIndex={-1}
      onKeyDown={(event) => onCountingKey(event, counting.offered, keys)}
      // Quick taps with plus must not zoom the page.
      className="@container touch-manipulation outline-none"
    >
      {/* The first screenful: what is counted with lies at its bottom, under the thumb. */}
      <div className="flex min-h-svh flex-col @min-[40rem]:min-h-0">
        {above}
        <div className="mx-auto flex w-full max-w-xl flex-1 flex-col gap-1.5 px-3 py-2 @min-[40rem]:grid @min-[40rem]:max-w-5xl @min-[40rem]:grid-cols-2 @min-[40rem]:content-start @min-[40rem]:gap-x-6">
          <TrayHead ref={heading} view={view} today={today} onNotes={() => notes.current?.focus()} />
          {tray.treatment && (
            <p className="rounded-paper border-l-4 border-ochre bg-ochre-soft px-3 py-1.5 text-sm leading-snug @min-[40rem]:col-span-2">
              <b>Treated seed</b> ({tray.treatment}): wear gloves, wash your hands after; it is never food or feed.
            </p>
          )}
          <div className="flex min-h-0 min-w-0 flex-1 flex-col gap-1.5">
            {counting.correcting && (
              <p className="flex flex-wrap items-center justify-between gap-x-3 rounded-paper border-l-4 border-indigo bg-indigo-soft px-3">
                <b>Counting for {onWords.replace('on ', '')}</b>
                <button type="button" className="min-h-11 underline" onClick={() => counting.openDay(today)}>
                  back to today
                </button>
              </p>
            )}
            <DishTabs dishes={dishes} open={index} on={on} onWords={onWords} onOpen={openDish} />
            <DishTroubles state={state} on={on} onDay={counting.openDay} />
            <div className="relative min-h-34 flex-1 contain-strict @min-[40rem]:h-[min(30rem,calc(100svh-13rem))] @min-[40rem]:flex-none">
              <SeedDish
                marks={seedsInDish(state, on)}
                chosen={counting.chosen}
                still={counting.isStill}
                onChange={counting.change}
                onGone={counting.gone}
              />
            </div>
            <div className="flex flex-wrap items-center justify-between gap-x-2 gap-y-1">
              <div role="status" className="min-w-40 flex-1 leading-snug" data-tally>
                {counting.message && <p className="font-semibold">{counting.message}</p>}
                <p>
                  <span className="sr-only">Dish {state.dish.position}: </span>
                  {said}
                </p>
              </div>
              {dishes.length > 1 && !dishes.some(isCounted) && (
                <button
                  type="button"
                  className="button px-2.5! text-sm"
                  onMouseDown={keepFocus}
                  onClick={counting.noneNewInRest}
                >
                  None new in all {dishes.length}
                </button>
              )}
            </div>
          </div>
          <div className="grid min-w-0 content-start gap-1.5">
            <CountingPanel
              view={view}
              counting={counting}
              said={said}
              canUndo={canUndo}
              following={dishes[following]?.dish.position ?? null}
              onNext={next}
              onHelp={keys.help}
            />
            {leaving && !done && (
              <StillOpen
                view={view}
                on={on}
                today={today}
                onDish={openDish}
                onNoneNew={counting.noneNewInRest}
                onGoOn={onDone}
              />
            )}
            <ReadyToClose view={view} online={online} />
          </div>
        </div>
      </div>
      <BelowTray ref={notes} bench={bench} view={view} counting={counting} today={today} online={online} />
      <KeyHelp ref={help} />
    </section>
  );
}
