import Link from 'next/link';
import { labelsHref, TRAY_LABELS_PATH } from '@/app/_components/labels/labels-address';
import { formatCount } from '@/app/_format/figures';
import { testPath } from '@/app/_format/links';
import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import type { LabelledDish } from '@/lib/domain/labels/tray-label';

/** The trays whose labels are to be printed. */
export function ChosenTrays({ address, dishes }: { address: Address; dishes: readonly LabelledDish[] }) {
  const trays = dishes.filter(({ dish }) => dish === 1);
  const numbers = trays.map(({ trayNumber }) => trayNumber);
  return (
    <details className="sheet" open={trays.length <= 6}>
      <summary className="cursor-pointer py-2.5 font-semibold">
        {formatCount(trays.length)} {trays.length === 1 ? 'tray' : 'trays'}, {formatCount(dishes.length)}{' '}
        {dishes.length === 1 ? 'dish' : 'dishes'}
      </summary>
      <ul className="divide-y divide-rule">
        {trays.map((tray) => (
          <li key={tray.trayNumber} className="flex min-h-11 flex-wrap items-center justify-between gap-x-3">
            <span>
              <Link
                href={testPath(tray.trayNumber)}
                prefetch={false}
                className="figures inline-flex min-h-11 items-center"
              >
                {tray.trayNumber}
              </Link>{' '}
              {tray.accessionName}, {tray.dishes} {tray.dishes === 1 ? 'dish' : 'dishes'}
            </span>
            {trays.length > 1 && (
              <Link
                href={labelsHref(
                  address,
                  { trays: numbers.filter((number) => number !== tray.trayNumber) },
                  TRAY_LABELS_PATH,
                )}
                prefetch={false}
                className="inline-flex min-h-11 items-center"
              >
                leave out<span className="sr-only"> {tray.trayNumber}</span>
              </Link>
            )}
          </li>
        ))}
      </ul>
      <p className="mt-3">
        <Link href={labelsHref(address, { trays: [] }, TRAY_LABELS_PATH)} className="button">
          Choose others
        </Link>
      </p>
    </details>
  );
}
