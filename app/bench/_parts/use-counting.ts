import { useState } from 'react';
import { NOTHING_FOUND, seedsFound } from '@/lib/domain/germination/bench/tray-count';
import type { SeedClass } from '@/lib/domain/germination/seed-classes';
import type { Bench, TrayView } from '../_store/bench-view';
import { classesOffered, type Finding, typedOn, withNumber } from './change-count';
import { onDayInWords, shortDay } from './day-words';
import { placesOf } from './seeds-in-dish';
import { dishesNotCounted } from './tray-progress';
import { whatsUndone } from './whats-undone';

/** What the hands are at: which dish, which class, which digits. Nothing of it is a finding; those are in the bench. */
interface Hand {
  dish: number;
  /** null: today, whatever day it becomes */
  day: string | null;
  chosen: SeedClass;
  allClasses: boolean;
  /** digits typed in this go */
  typed: string;
  /** they have made an entry, with which a further digit goes on */
  hasTyped: boolean;
  /** another number is being given for a day about which counts disagree */
  settling: boolean;
  /** what just happened, or why something did not */
  message: string;
}

const FRESH = { chosen: 'normal', typed: '', hasTyped: false, settling: false, message: '' } as const;

/** Everything that can be done to the open tray, whether by finger, key or button. */
export function useCounting(bench: Bench, view: TrayView, today: string) {
  const [hand, setHand] = useState<Hand>(() => ({
    ...FRESH,
    dish: firstToCount(view, today),
    day: null,
    allClasses: false,
  }));
  const index = Math.min(hand.dish, view.dishes.length - 1);
  const state = view.dishes[index];
  if (!state) throw new RangeError(`useCounting: tray ${view.tray.number} has no dishes`);
  const on = hand.day ?? today;
  const { dish, remaining } = state;
  const day = state.days.find((one) => one.on === on);
  const disagrees = day?.disagree === true && !hand.settling;
  const counted = day !== undefined && day.found !== null && !hand.settling;
  const finding: Finding = counted
    ? { found: day.found ?? NOTHING_FOUND, places: placesOf(day) }
    : { found: NOTHING_FOUND, places: null };
  const { chosen } = hand;
  const number = finding.found[chosen];
  const left = remaining + (hand.settling && day?.found ? seedsFound(day.found) : 0);
  const final = on >= view.tray.finalCountOn;
  const offered = classesOffered(final || hand.allClasses, view.tray.hardSeedOccurs, counted ? finding.found : null);

  const to = (change: Partial<Hand>) => setHand((before) => ({ ...before, ...change }));
  const say = (message: string) => to({ message });
  const write = (next: Finding, typed = '') => {
    const goesOn = typed !== '' && hand.hasTyped;
    bench.enter({ trayId: view.tray.id, dishId: dish.id, on, ...next, goesOn });
    // What stood there already made no entry, and there is none to go on with.
    const entered = bench.view().trays.find((one) => one.tray.id === view.tray.id) !== view;
    to({ typed, hasTyped: typed !== '' && (hand.hasTyped || entered), settling: false, message: '' });
  };
  const fullWords = () =>
    `All ${dish.seeds} seeds of dish ${dish.position} are counted. Take one back first, or correct an earlier day.`;

  return {
    index,
    state,
    on,
    onWords: onDayInWords(on, today),
    counted,
    disagrees,
    /** seeds cannot be tapped until the number is right again */
    isStill: remaining < 0 || day?.disagree === true,
    finding,
    chosen,
    number: counted ? number : null,
    left,
    final,
    offered,
    allOffered: offered.length === 5,
    message: hand.message,
    correcting: hand.day !== null && hand.day !== today,

    openDish: (dishIndex: number, message = '') => to({ ...FRESH, dish: dishIndex, message }),
    openDay: (chosenDay: string) => to({ ...FRESH, day: chosenDay === today ? null : chosenDay }),
    choose: (seedClass: SeedClass) => to({ chosen: seedClass, typed: '', hasTyped: false, message: '' }),
    offerAll: () => to({ allClasses: true }),
    say,
    change: (next: Finding) => write(next),
    gone: () => say('That place is empty: its seed was taken out on another day.'),

    more() {
      if (disagrees) return say('First say which count holds.');
      if (left <= 0) return say(fullWords());
      write(withNumber(finding, chosen, number + 1));
    },
    less() {
      if (disagrees) return say('First say which count holds.');
      if (number === 0) return say(`No ${chosen} seed is counted ${onDayInWords(on, today)}.`);
      write(withNumber(finding, chosen, number - 1));
    },
    digit(digit: string) {
      if (disagrees) return say('First say which count holds.');
      const typed = typedOn(hand.typed, digit);
      const others = seedsFound(finding.found) - number;
      if (Number(typed) + others > dish.seeds) {
        return say(
          `${Number(typed) + others} cannot be: dish ${dish.position} was set with ${dish.seeds} seeds. It stays at ${number} ${chosen}.`,
        );
      }
      write(withNumber(finding, chosen, Number(typed)), typed);
    },
    digitBack() {
      if (disagrees || number === 0) return;
      const fewer = Math.floor(number / 10);
      write(withNumber(finding, chosen, fewer), fewer === 0 ? '' : String(fewer));
    },
    noneNew() {
      if (disagrees) return say('First say which count holds.');
      if (counted) return say(`Dish ${dish.position} is counted ${onDayInWords(on, today)} already.`);
      write({ found: NOTHING_FOUND, places: null });
    },
    noneNewInRest() {
      bench.together(() => {
        for (const one of dishesNotCounted(view, on)) {
          bench.enter({ trayId: view.tray.id, dishId: one.dish.id, on, found: NOTHING_FOUND, places: null });
        }
      });
      to({ ...FRESH, message: 'None new in the dishes that were not counted yet.' });
    },
    restAre(seedClass: SeedClass) {
      write(withNumber(finding, seedClass, finding.found[seedClass] + left));
    },
    settle: (next: { found: Finding['found'] | null; places: Finding['places'] }) => {
      bench.enter({ trayId: view.tray.id, dishId: dish.id, on, ...next });
      to({ ...FRESH });
    },
    settleOther: () => to({ ...FRESH, settling: true, message: 'Type the number that holds.' }),
    takeDayBack() {
      bench.enter({ trayId: view.tray.id, dishId: dish.id, on, found: null, places: null });
      to({ ...FRESH, message: `The count of ${on === today ? 'today' : shortDay(on)} is taken back.` });
    },
    undo() {
      const { trays, canUndo } = bench.view();
      if (!canUndo) return say('There is nothing to take back.');
      bench.undo();
      const undone = whatsUndone(trays, bench.view().trays);
      if (undone === null || undone.trayNumber === view.tray.number) {
        to({ ...FRESH, chosen, dish: undone?.dish ?? index, message: 'Taken back.' });
      } else {
        to({ ...FRESH, chosen, message: `Taken back in ${undone.trayNumber}, dish ${undone.dish + 1}.` });
      }
    },
  };
}

/** A tray that was begun is gone on with where it was left. */
function firstToCount({ dishes }: TrayView, today: string): number {
  return Math.max(
    0,
    dishes.findIndex(({ remaining, days }) => remaining > 0 && days.every(({ on }) => on !== today)),
  );
}

export type Counting = ReturnType<typeof useCounting>;
