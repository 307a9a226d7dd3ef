import clsx from 'clsx';
import { Check } from 'lucide-react';
import type { DishState } from '@/lib/domain/germination/bench/dish-state';
import { keepFocus } from './keep-focus';
import { tallyInWords, tallyOf } from './tally-words';

interface Props {
  dishes: readonly DishState[];
  /** index of the dish that is open */
  open: number;
  on: string;
  onWords: string;
  onOpen: (index: number) => void;
}

/** The dishes of a tray side by side: which are counted, and how much is out. */
export function DishTabs({ dishes, open, on, onWords, onOpen }: Props) {
  return (
    <nav aria-label="Dishes" className="grid grid-cols-[repeat(auto-fit,minmax(3rem,1fr))] gap-1.5">
      {dishes.map((state, index) => {
        const tally = tallyOf([state], on);
        const wrong = state.remaining < 0 || state.disagreements.length > 0;
        return (
          <button
            key={state.dish.id}
            type="button"
            onMouseDown={keepFocus}
            onClick={() => onOpen(index)}
            aria-current={index === open ? 'true' : undefined}
            aria-label={`Dish ${state.dish.position}: ${wrong ? 'look again, ' : ''}${tallyInWords(tally, onWords)}`}
            className={clsx(
              'grid min-h-11 content-center rounded-paper border text-center leading-tight',
              index === open ? 'border-ink bg-sheet outline-1 outline-ink' : 'border-rule',
              wrong && 'border-madder! bg-madder-soft',
            )}
          >
            <span className="flex items-center justify-center gap-1 text-sm">
              {state.dish.position}
              {wrong ? (
                <b className="text-madder">!</b>
              ) : tally.onDay !== null ? (
                <Check aria-hidden size={14} strokeWidth={3} className="text-leaf" />
              ) : null}
            </span>
            <b className="figures">{tally.onDay === null ? '–' : tally.out}</b>
          </button>
        );
      })}
    </nav>
  );
}
