import { Undo2 } from 'lucide-react';
import { useLayoutEffect, useMemo, useRef } from 'react';
import type { TrayView } from '../_store/bench-view';
import { ClassChooser } from './class-chooser';
import { Counter } from './counter';
import { Disagreement } from './dish-troubles';
import { keepFocus } from './keep-focus';
import { Keypad } from './keypad';
import { RestOfDish } from './rest-of-dish';
import type { Counting } from './use-counting';

interface Props {
  view: TrayView;
  counting: Counting;
  /** the dish's figures in words */
  said: string;
  canUndo: boolean;
  /** position of the dish that follows; null: this is the last */
  following: number | null;
  onNext: () => void;
  onHelp: () => void;
}

/** What is counted with, under the thumb. */
export function CountingPanel({ view, counting, said, canUndo, following, onNext, onHelp }: Props) {
  const { state, on, onWords } = counting;
  const keys = useSteadyKeys(counting);
  return (
    <>
      {counting.disagrees ? (
        <Disagreement
          state={state}
          on={on}
          onWords={onWords}
          onSettle={counting.settle}
          onOther={counting.settleOther}
        />
      ) : (
        <>
          {(counting.final || counting.allOffered) && counting.left > 0 && (
            <RestOfDish counting={counting} hardSeedOccurs={view.tray.hardSeedOccurs} />
          )}
          <ClassChooser
            offered={counting.offered}
            chosen={counting.chosen}
            found={counting.finding.found}
            onMore={counting.allOffered ? null : counting.offerAll}
            onChoose={counting.choose}
          />
          <Counter
            seedClass={counting.chosen}
            position={state.dish.position}
            onWords={onWords}
            number={counting.number}
            most={Math.max(0, (counting.number ?? 0) + counting.left)}
            said={said}
            onLess={counting.less}
            onMore={counting.more}
          />
          <Keypad {...keys} />
        </>
      )}
      <div className="grid grid-cols-[repeat(auto-fit,minmax(6.5rem,1fr))] gap-1.5">
        <button
          type="button"
          className="button min-h-12 px-2!"
          aria-disabled={!canUndo || undefined}
          onMouseDown={keepFocus}
          onClick={counting.undo}
        >
          <Undo2 aria-hidden size={20} /> Undo
        </button>
        <button
          type="button"
          className="button main min-h-12 px-2! whitespace-normal!"
          onMouseDown={keepFocus}
          // A finger that bounces must not skip a dish.
          onClick={(event) => event.detail < 2 && onNext()}
        >
          {following === null ? 'Done' : `Next: dish ${following}`}
        </button>
      </div>
      <button
        type="button"
        className="hidden min-h-11 justify-self-end underline @min-[48rem]:block"
        onMouseDown={keepFocus}
        onClick={onHelp}
      >
        Keys (?)
      </button>
    </>
  );
}

/** The keypad's deeds as the same functions for as long as the panel stands; each does what holds when it is called. */
function useSteadyKeys(counting: Counting) {
  const latest = useRef(counting);
  useLayoutEffect(() => {
    latest.current = counting;
  });
  return useMemo(
    () => ({
      onDigit: (digit: string) => latest.current.digit(digit),
      onBack: () => latest.current.digitBack(),
      onNoneNew: () => latest.current.noneNew(),
    }),
    [],
  );
}
