import type { TrayView } from '../_store/bench-view';
import { onDayInWords } from './day-words';
import { tallyInWords, tallyOf, unreadyInWords } from './tally-words';
import { dishesNotCounted, isReadyToClose, toPutRight } from './tray-progress';

interface StillOpenProps {
  view: TrayView;
  on: string;
  today: string;
  onDish: (index: number) => void;
  onNoneNew: () => void;
  onGoOn: () => void;
}

/** What is missing in a tray that somebody is about to leave. They may leave it, knowing it. */
export function StillOpen({ view, on, today, onDish, onNoneNew, onGoOn }: StillOpenProps) {
  const onWords = onDayInWords(on, today);
  const notCounted = dishesNotCounted(view, on);
  const missing = [
    ...notCounted.map(({ dish }) => ({
      position: dish.position,
      said: `Dish ${dish.position} is not counted ${onWords}.`,
    })),
    ...toPutRight(view, on).map((unready) => ({
      position: unready.position,
      said: unreadyInWords(unready, (day) => onDayInWords(day, today)),
    })),
  ];
  return (
    <section aria-label="Not done yet" className="grid gap-2 rounded-paper border-l-4 border-ochre bg-ochre-soft p-3">
      <div role="alert">
        <ul className="grid gap-1">
          {missing.map(({ said }) => (
            <li key={said}>{said}</li>
          ))}
        </ul>
      </div>
      <div className="flex flex-wrap gap-2">
        {notCounted.length > 0 && (
          <button type="button" className="button" onClick={onNoneNew}>
            None new there
          </button>
        )}
        {[...new Set(missing.map(({ position }) => position))].map((position) => (
          <button
            key={position}
            type="button"
            className="button"
            onClick={() => onDish(view.dishes.findIndex(({ dish }) => dish.position === position))}
          >
            To dish {position}
          </button>
        ))}
        <button type="button" className="button" onClick={onGoOn}>
          Leave it so
        </button>
      </div>
    </section>
  );
}

/** Said as soon as every seed of a tray has a class. */
export function ReadyToClose({ view, online }: { view: TrayView; online: boolean }) {
  if (!isReadyToClose(view)) return null;
  return (
    <p className="rounded-paper border-l-4 border-leaf bg-leaf-soft px-3 py-2">
      <b>Ready to close.</b> Every seed has its class.{' '}
      {online ? (
        <a
          className="inline-block py-2.5 text-leaf underline underline-offset-3"
          href={`/germination/${view.tray.number}`}
        >
          Look at the result and close the test
        </a>
      ) : (
        'The test is closed in Hilum, which needs a connection.'
      )}
    </p>
  );
}

/** What was noted of the tray that was just left, shown over the next one and over the list. */
export function JustDone({ view, today, online }: { view: TrayView; today: string; online: boolean }) {
  return (
    <div role="status" className="grid gap-1 border-b border-rule bg-leaf-soft px-3 py-1.5 text-sm">
      <p>
        <a className="figures inline-block py-1 font-semibold underline" href={`#${view.tray.number}`}>
          {view.tray.number}
        </a>{' '}
        noted: {tallyInWords(tallyOf(view.dishes, today), 'today')}
      </p>
      <ReadyToClose view={view} online={online} />
    </div>
  );
}
