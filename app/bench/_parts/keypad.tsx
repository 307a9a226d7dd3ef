import { Delete } from 'lucide-react';
import { memo } from 'react';
import { keepFocus } from './keep-focus';

const KEY =
  'min-h-12 min-w-0 rounded-paper border border-edge bg-sheet text-xl font-semibold leading-none active:bg-sunk';

interface Props {
  onDigit: (digit: string) => void;
  onBack: () => void;
  onNoneNew: () => void;
}

/** Digits for today's number, under the thumb. Drawn once: what its keys do is asked for when one is pressed. */
export const Keypad = memo(function Keypad({ onDigit, onBack, onNoneNew }: Props) {
  const digits = (row: string) =>
    [...row].map((digit) => (
      <button
        key={digit}
        type="button"
        className={`${KEY} figures`}
        onMouseDown={keepFocus}
        onClick={() => onDigit(digit)}
      >
        {digit}
      </button>
    ));
  return (
    <fieldset className="grid min-w-0 grid-cols-6 gap-1.5 @max-[15rem]:grid-cols-3">
      <legend className="sr-only">Keypad</legend>
      {digits('12345')}
      <button
        type="button"
        className={`${KEY} grid place-items-center`}
        aria-label="Last digit away"
        onMouseDown={keepFocus}
        onClick={onBack}
      >
        <Delete aria-hidden size={22} />
      </button>
      {digits('67890')}
      <button
        type="button"
        className={`${KEY} px-0! text-[0.8125rem]!`}
        aria-label="None new: same as last time"
        onMouseDown={keepFocus}
        onClick={onNoneNew}
      >
        none new
      </button>
    </fieldset>
  );
});
