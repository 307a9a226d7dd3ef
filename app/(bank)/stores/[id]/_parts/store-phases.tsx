import Link from 'next/link';
import { targetInWords } from '@/app/_format/climate';
import { formatDate } from '@/app/_format/figures';
import { storePath } from '@/app/_format/store-path';
import { FIRST_PHASE_FROM } from '@/lib/server/judging/store-climates';
import type { StoreDetail } from '@/lib/server/queries/stores';

/** Where a store stood and how it was set, the present last: seed in it ages by this. Nothing where it never changed. */
export function StorePhases({ phases }: { phases: StoreDetail['phases'] }) {
  // Of two phases from the same day the later is the correction, and holds.
  const held = [...new Map(phases.map((phase) => [phase.from, phase])).values()].sort((a, b) =>
    a.from.localeCompare(b.from),
  );
  if (held.length < 2) return null;
  return (
    <section className="grid gap-2" aria-labelledby="phases">
      <h2 id="phases">Where it stood, and how it was set</h2>
      <ol className="grid gap-1">
        {held.map((phase) => (
          <li key={phase.from}>
            <span className="figures">
              {phase.from === FIRST_PHASE_FROM ? 'At first' : `From ${formatDate(phase.from)}`}
            </span>
            {': '}
            {phase.parent ? (
              <>
                in <Link href={storePath(phase.parent.id)}>{phase.parent.name}</Link>
              </>
            ) : (
              'by itself'
            )}
            ,{' '}
            {phase.targetTemperatureC === null
              ? 'as cold and dry as that'
              : `meant to be ${targetInWords({ targetTemperatureC: phase.targetTemperatureC, targetRelativeHumidity: phase.targetRelativeHumidity })}`}
          </li>
        ))}
      </ol>
    </section>
  );
}
