import { ArrowLeft, NotebookPen } from 'lucide-react';
import type { Ref } from 'react';
import type { TrayView } from '../_store/bench-view';
import { dayOfTray, dueInWords } from './day-words';
import { keepFocus } from './keep-focus';
import { backToList } from './open-tray';

interface Props {
  view: TrayView;
  today: string;
  onNotes: () => void;
  ref: Ref<HTMLHeadingElement>;
}

/** Which tray this is, so that it can be compared with the label in the hand. */
export function TrayHead({ view, today, onNotes, ref }: Props) {
  const { tray, waiting } = view;
  return (
    <header className="flex items-start justify-between gap-2 @max-[15rem]:flex-wrap @min-[40rem]:col-span-2">
      <button
        type="button"
        className="button size-11 shrink-0 px-0!"
        aria-label="All trays"
        onMouseDown={keepFocus}
        onClick={backToList}
      >
        <ArrowLeft aria-hidden size={22} />
      </button>
      <div className="min-w-0 flex-1 @max-[15rem]:order-last @max-[15rem]:basis-full">
        <h1 id="tray" ref={ref} tabIndex={-1} className="text-lg! leading-tight! outline-none">
          <span className="figures">{tray.number}</span> <span className="break-words">{tray.accessionName}</span>
        </h1>
        <p className="quiet text-sm leading-tight break-words">
          {[tray.cropName, tray.place, dayOfTray(view, today)].filter(Boolean).join(' · ')} ·{' '}
          <b className="text-ink">{dueInWords(view, today)}</b>
          {waiting > 0 && <> · {waiting} waiting to be sent</>}
        </p>
      </div>
      <button
        type="button"
        className="button min-w-11 shrink-0 px-2!"
        aria-label="Notes, photos and other days"
        onMouseDown={keepFocus}
        onClick={onNotes}
      >
        <NotebookPen aria-hidden size={22} />
        {tray.notes.length > 0 && <span className="figures">{tray.notes.length}</span>}
      </button>
    </header>
  );
}
