import { Flag, TriangleAlert } from 'lucide-react';
import { TrayLink } from '@/app/_components/tray-link';
import { lateInWords } from '@/app/_format/next-count-words';
import type { AgendaEntry, AgendaGroup } from '@/lib/domain/germination/bench/count-agenda';
import { temperaturesInDegrees } from '@/lib/domain/germination/bench/tray-method';
import type { TrayUnderWay } from '@/lib/server/queries/trays-under-way';

interface Props {
  groups: readonly AgendaGroup<TrayUnderWay>[];
  /** trays are opened at the bench, to be counted now */
  atBench: boolean;
}

/** Trays to count, those together that stand together. */
export function CountGroups({ groups, atBench }: Props) {
  return groups.map((group) => (
    <div key={`${group.temperatures} ${group.place}`} className="border-b border-rule last:border-0">
      <p className="label px-5 pt-3">{whereInWords(group)}</p>
      <ul>
        {group.entries.map((entry) => (
          <li key={entry.tray.number}>
            <TrayEntry entry={entry} atBench={atBench} />
          </li>
        ))}
      </ul>
    </div>
  ));
}

const ENTRY =
  'grid min-h-11 content-center gap-x-4 gap-y-1 px-5 py-2 text-ink no-underline hover:bg-sunk sm:grid-cols-[minmax(0,1fr)_auto] sm:items-center';

function TrayEntry({ entry: { tray, count }, atBench }: { entry: AgendaEntry<TrayUnderWay>; atBench: boolean }) {
  return (
    <TrayLink number={tray.number} atBench={atBench} className={ENTRY}>
      <span className="min-w-0">
        <span className="figures font-bold">{tray.number}</span> <b>{tray.accessionName}</b>{' '}
        <span className="quiet">{tray.cropName}</span>
      </span>
      <span className="flex flex-wrap gap-x-3 gap-y-1 text-sm">
        {count.daysLate > 0 && (
          <span className="mark mark-regrow">
            <TriangleAlert aria-hidden size={14} />
            {lateInWords(count.daysLate)}
          </span>
        )}
        {count.final && (
          <span className="mark mark-computed">
            <Flag aria-hidden size={14} />
            last count
          </span>
        )}
        <span className="quiet">
          {tray.dishes} {tray.dishes === 1 ? 'dish' : 'dishes'}, {tray.remaining} of {tray.seeds} seeds still there
        </span>
      </span>
    </TrayLink>
  );
}

export function whereInWords({ temperatures, place }: { temperatures: string | null; place: string | null }): string {
  const known = [temperatures && temperaturesInDegrees(temperatures), place].filter(Boolean);
  return known.length === 0 ? 'temperature and place not noted' : known.join(' · ');
}
