import Link from 'next/link';
import { formatDate } from '@/app/_format/figures';
import { testPath } from '@/app/_format/links';
import { nextCountInWords } from '@/app/_format/next-count-words';
import { findTraysUnderWay } from '@/lib/server/queries/trays-under-way';
import { today } from '@/lib/server/today';

interface Props {
  lotIds: readonly string[];
  /** lots are named: there are several */
  nameLots?: boolean;
}

/** Germination tests of these lots that are in the incubator now; nothing when there is none. */
export function TestsUnderWay({ lotIds, nameLots = false }: Props) {
  const wanted = new Set(lotIds);
  const trays = findTraysUnderWay().filter(({ lotId }) => wanted.has(lotId));
  if (trays.length === 0) return null;
  const day = today();
  return (
    <section className="sheet grid gap-1" aria-labelledby="tests-under-way">
      <h2 id="tests-under-way">{trays.length === 1 ? 'A test is under way' : 'Tests are under way'}</h2>
      <ul>
        {trays.map((tray) => (
          <li key={tray.number}>
            <Link
              href={testPath(tray.number)}
              prefetch={false}
              className="figures inline-flex min-h-11 items-center text-leaf underline underline-offset-3"
            >
              {tray.number}
            </Link>{' '}
            {nameLots && (
              <>
                of lot <span className="figures">{tray.lotNumber}</span>,{' '}
              </>
            )}
            {tray.seeds} seeds set {formatDate(tray.setOn)};{' '}
            {tray.toClose
              ? 'every seed is classed: it can be closed'
              : `next count ${nextCountInWords(tray.next, day)}`}
          </li>
        ))}
      </ul>
    </section>
  );
}
