import clsx from 'clsx';
import { Check } from 'lucide-react';
import { memo } from 'react';
import type { TrayView } from '../_store/bench-view';
import { dueInWords } from './day-words';
import { noteOpenedFromList } from './open-tray';
import { tallyOf } from './tally-words';
import { isReadyToClose } from './tray-progress';

interface Props {
  view: TrayView;
  today: string;
}

/** One tray in the list. Drawn anew only when this tray or the day changes: an entry costs one row, not two hundred. */
export const TrayRow = memo(function TrayRow({ view, today }: Props) {
  const { tray, dishes, next, countedToday, waiting } = view;
  const { out, seeds } = tallyOf(dishes, today);
  const late = !countedToday && next.daysLate > 0;
  return (
    <li className="border-b border-rule [contain-intrinsic-size:auto_5.5rem] [content-visibility:auto]">
      <a
        href={`#${tray.number}`}
        onClick={noteOpenedFromList}
        className="grid grid-cols-[1fr_auto] items-center gap-x-3 gap-y-0.5 px-3 py-2.5 hover:bg-sheet active:bg-leaf-soft @max-[18rem]:grid-cols-1"
      >
        <span className="min-w-0 break-words">
          <b className="figures">{tray.number}</b> <b>{tray.accessionName}</b>{' '}
          <span className="quiet">{tray.cropName}</span>
        </span>
        <span className="row-span-2 grid justify-items-end gap-1 @max-[18rem]:order-last @max-[18rem]:row-span-1 @max-[18rem]:justify-items-start">
          <span aria-hidden="true" className="flex flex-wrap justify-end gap-1">
            {dishes.slice(0, MOST_DISHES).map(({ dish, remaining, disagreements }) => (
              <SmallDish
                key={dish.id}
                share={1 - Math.max(0, remaining) / dish.seeds}
                wrong={remaining < 0 || disagreements.length > 0}
              />
            ))}
          </span>
          <span className="label figures">
            {out} of {seeds} <span className="sr-only">out</span>
          </span>
        </span>
        <span className="quiet flex min-w-0 flex-wrap items-center gap-x-2 text-sm">
          {countedToday ? (
            <b className="inline-flex items-center gap-1 text-leaf">
              <Check aria-hidden size={16} strokeWidth={3} /> counted today
            </b>
          ) : (
            <span className={clsx(late && 'font-bold text-madder', next.final && !late && 'font-bold text-ink')}>
              {dueInWords(view, today)}
            </span>
          )}
          {countedToday && next.final && (
            <b className="text-ink">{isReadyToClose(view) ? 'ready to close' : 'final count'}</b>
          )}
          {tray.place && <span className="break-words">{tray.place}</span>}
          {dishes.some(({ remaining, disagreements }) => remaining < 0 || disagreements.length > 0) && (
            <b className="text-madder">! look again</b>
          )}
          {waiting > 0 && <span className="mark mark-test py-0! text-xs!">{waiting} waiting to be sent</span>}
        </span>
      </a>
    </li>
  );
});

const MOST_DISHES = 8;

/** A dish that fills as its seeds are found. */
function SmallDish({ share, wrong }: { share: number; wrong: boolean }) {
  return (
    <span
      className={clsx('size-5 rounded-full border', wrong ? 'border-2 border-dashed border-madder' : 'border-edge')}
      style={{ background: `linear-gradient(to top, var(--leaf) ${share * 100}%, var(--sheet) 0)` }}
    />
  );
}
