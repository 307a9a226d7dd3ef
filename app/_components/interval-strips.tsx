import type { Interval } from '@/lib/domain/statistics/binomial-interval';

export interface Strip {
  name: string;
  proportion: number;
  interval: Pick<Interval, 'lower' | 'upper'>;
  /** computed for this test, or an earlier one to compare with */
  quiet?: boolean;
}

interface Props {
  strips: Strip[];
  /** a line across all strips */
  standard: { proportion: number; label: string } | null;
}

/** Each figure as a point with its interval on one scale from 0 to 100, labelled at its line. */
export function IntervalStrips({ strips, standard }: Props) {
  return (
    <div aria-hidden className="grid gap-2">
      {strips.map(({ name, proportion, interval, quiet }) => (
        <div key={name} className="grid grid-cols-[6.5rem_1fr] items-center gap-3">
          <span className={quiet ? 'quiet text-sm' : 'text-sm'}>{name}</span>
          <div className="relative h-7 border-x border-rule bg-sunk">
            {[25, 50, 75].map((percent) => (
              <span key={percent} className="absolute inset-y-0 border-l border-grid" style={{ left: `${percent}%` }} />
            ))}
            <span
              className={`absolute top-1/2 h-0.5 -translate-y-1/2 ${quiet ? 'bg-ink-2' : 'bg-ink'}`}
              style={{ left: `${interval.lower * 100}%`, width: `${(interval.upper - interval.lower) * 100}%` }}
            />
            <span
              className={`absolute top-1/2 size-3.5 -translate-1/2 rounded-full border-2 bg-sheet ${quiet ? 'border-ink-2' : 'border-ink'}`}
              style={{ left: `${proportion * 100}%` }}
            />
            {standard && (
              <span
                className="absolute -inset-y-1 border-l-2 border-dashed border-madder"
                style={{ left: `${standard.proportion * 100}%` }}
              />
            )}
          </div>
        </div>
      ))}
      <div className="grid grid-cols-[6.5rem_1fr] gap-3">
        <span />
        <div className="figures relative h-5 text-sm text-ink-2">
          <span className="absolute left-0">0</span>
          <span className="absolute left-1/2 -translate-x-1/2">50</span>
          <span className="absolute right-0">100 %</span>
        </div>
      </div>
      {standard && <p className="text-sm text-madder">dashed: {standard.label}</p>}
    </div>
  );
}
