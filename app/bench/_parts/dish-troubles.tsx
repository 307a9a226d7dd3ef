import type { DishState } from '@/lib/domain/germination/bench/dish-state';
import { seedsFound } from '@/lib/domain/germination/bench/tray-count';
import type { BenchCount } from '@/lib/schemas/bench-wire';
import { shortDay } from './day-words';
import { disagreementInWords, type WayToSettle, waysToSettle } from './disagreement-options';

interface DisagreementProps {
  state: DishState<BenchCount>;
  on: string;
  onWords: string;
  onSettle: (way: WayToSettle) => void;
  onOther: () => void;
}

/** Two people wrote different things of one dish and day: whoever stands before the dish says what holds. */
export function Disagreement({ state, on, onWords, onSettle, onOther }: DisagreementProps) {
  const day = state.disagreements.find((one) => one.on === on);
  if (!day) return null;
  const mostOnDay = state.remaining + (day.found ? seedsFound(day.found) : 0);
  return (
    <section
      aria-label="Counts disagree"
      className="grid gap-2 rounded-paper border-l-4 border-madder bg-madder-soft p-3"
    >
      <p role="alert">
        <b>{disagreementInWords(day)}</b> in dish {state.dish.position} {onWords}. Which holds?
      </p>
      <div className="flex flex-wrap gap-2">
        {waysToSettle(day, mostOnDay).map((way) => (
          <button
            key={way.said}
            type="button"
            className="button min-w-14 whitespace-normal!"
            onClick={() => onSettle(way)}
          >
            {way.said}
          </button>
        ))}
        <button type="button" className="button" onClick={onOther}>
          another number
        </button>
      </div>
    </section>
  );
}

interface OtherDaysProps {
  state: DishState<BenchCount>;
  on: string;
  onDay: (on: string) => void;
}

/** More was written down than the dish held, or counts of another day disagree: what is wrong, and where to mend it. */
export function DishTroubles({ state, on, onDay }: OtherDaysProps) {
  const { dish, remaining, days, disagreements } = state;
  const others = days.filter((day) => day.on !== on && day.found !== null && seedsFound(day.found) > 0);
  const elsewhere = disagreements.filter((day) => day.on !== on);
  if (remaining >= 0 && elsewhere.length === 0) return null;
  return (
    <div role="alert" className="grid gap-2 rounded-paper border-l-4 border-madder bg-madder-soft p-3">
      {remaining < 0 && (
        <p>
          <b>{-remaining} too many.</b> Dish {dish.position} was set with {dish.seeds} seeds, and{' '}
          {dish.seeds - remaining} are written down. Type this day’s number again
          {others.length > 0 ? ', or correct another day:' : '.'}
        </p>
      )}
      {remaining < 0 && others.length > 0 && (
        <div className="flex flex-wrap gap-2">
          {others.map((day) => (
            <button key={day.on} type="button" className="button" onClick={() => onDay(day.on)}>
              {shortDay(day.on)}: {day.found ? seedsFound(day.found) : 0}
            </button>
          ))}
        </div>
      )}
      {elsewhere.map((day) => (
        <p key={day.on} className="flex flex-wrap items-center gap-2">
          Two counts of {shortDay(day.on)} disagree.
          <button type="button" className="button" onClick={() => onDay(day.on)}>
            Look at {shortDay(day.on)}
          </button>
        </p>
      ))}
    </div>
  );
}
