import type { TrayView } from '../_store/bench-view';
import { shortDay } from './day-words';
import { keepFocus } from './keep-focus';
import { tallyOf } from './tally-words';
import type { Counting } from './use-counting';

interface Props {
  view: TrayView;
  counting: Counting;
  today: string;
}

/** Days on which the tray was counted, to look at and correct, and any other day that was forgotten. */
export function TrayDays({ view, counting, today }: Props) {
  const { tray, dishes } = view;
  const days = [...new Set([...dishes.flatMap((dish) => dish.days.map((day) => day.on)), today])].sort();
  return (
    <section aria-labelledby="days" className="grid content-start gap-3">
      <h2 id="days">Other days</h2>
      <p className="label">
        Set on {shortDay(tray.setOn)}, first count {shortDay(tray.firstCountOn)}, final count{' '}
        {shortDay(tray.finalCountOn)}. Choose a day to look at its count or to correct it.
      </p>
      <div className="flex flex-wrap gap-1.5">
        {days.map((day) => (
          <button
            key={day}
            type="button"
            className={`button px-2.5! ${day === counting.on ? 'border-2! font-bold!' : 'border-rule!'}`}
            aria-pressed={day === counting.on}
            onMouseDown={keepFocus}
            onClick={() => {
              counting.openDay(day);
              scrollTo(0, 0);
            }}
          >
            {day === today ? 'today' : shortDay(day)}:{' '}
            <span className="figures">{tallyOf(dishes, day).onDay ?? '–'}</span>
          </button>
        ))}
      </div>
      <label className="grid justify-items-start gap-1">
        <span className="label">a day that is not there</span>
        <input
          type="date"
          className="field w-auto!"
          min={tray.setOn}
          max={today}
          onChange={(event) => {
            const { value, validity } = event.target;
            if (value && validity.valid) counting.openDay(value);
          }}
        />
      </label>
      {counting.counted && (
        <button type="button" className="button justify-self-start" onClick={counting.takeDayBack}>
          Take back dish {counting.state.dish.position}, {counting.onWords.replace('on ', '')}
        </button>
      )}
    </section>
  );
}
