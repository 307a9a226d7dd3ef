import { formatDate } from '@/app/_format/figures';
import type { PlannedCount } from '@/lib/domain/germination/bench/planned-counts';
import { plannedInWords } from './tray-words';

/** The counts that were planned, and what became of them. */
export function PlannedCounts({ plan }: { plan: PlannedCount[] }) {
  return (
    <section className="grid gap-3" aria-labelledby="plan-title">
      <h2 id="plan-title">Counts planned</h2>
      <ol className="sheet p-0!">
        {plan.map((count) => (
          <li
            key={count.on}
            className="flex flex-wrap justify-between gap-x-4 border-b border-rule px-5 py-2.5 last:border-0"
          >
            <span>
              {formatDate(count.on)} {count.final && <span className="quiet">final count</span>}
            </span>
            <span className={TONES[count.state]}>{plannedInWords(count)}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}

const TONES = {
  made: 'text-leaf',
  'passed-over': 'quiet',
  late: 'font-semibold text-ochre',
  today: 'font-semibold text-ochre',
  coming: 'quiet',
} as const;
