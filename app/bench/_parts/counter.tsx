import { Minus, Plus } from 'lucide-react';
import type { Ref } from 'react';
import type { SeedClass } from '@/lib/domain/germination/seed-classes';
import { keepFocus } from './keep-focus';

interface Props {
  seedClass: SeedClass;
  position: number;
  onWords: string;
  /** null: this dish is not counted on that day */
  number: number | null;
  most: number;
  /** the dish's figures in words, which change with the number */
  said: string;
  onLess: () => void;
  onMore: () => void;
  ref?: Ref<HTMLDivElement>;
}

/** The number being counted, with minus and plus large enough for a wet thumb. */
export function Counter({ seedClass, position, onWords, number, most, said, onLess, onMore, ref }: Props) {
  return (
    <div className="grid grid-cols-[1fr_auto_1fr] items-stretch gap-1.5">
      <button
        type="button"
        aria-label={`One ${seedClass} less`}
        onMouseDown={keepFocus}
        onClick={onLess}
        className="grid min-h-15 min-w-0 place-items-center rounded-paper border border-ink bg-sheet active:bg-sunk"
      >
        <Minus aria-hidden size={28} strokeWidth={3} />
      </button>
      <div
        ref={ref}
        role="spinbutton"
        tabIndex={0}
        aria-label={`${seedClass} ${onWords}, dish ${position}`}
        aria-valuenow={number ?? 0}
        aria-valuemin={0}
        aria-valuemax={most}
        aria-valuetext={`${number ?? 'not counted'}: ${said}`}
        className="grid min-w-20 content-center justify-items-center px-1 text-center"
      >
        <b className="figures text-3xl leading-none" data-number>
          {number ?? '–'}
        </b>
        <span className="label leading-tight">
          {seedClass} {onWords}
        </span>
      </div>
      <button
        type="button"
        aria-label={`One ${seedClass} more`}
        onMouseDown={keepFocus}
        onClick={onMore}
        className="grid min-h-15 min-w-0 place-items-center rounded-paper bg-leaf text-sheet active:brightness-90"
      >
        <Plus aria-hidden size={28} strokeWidth={3} />
      </button>
    </div>
  );
}
