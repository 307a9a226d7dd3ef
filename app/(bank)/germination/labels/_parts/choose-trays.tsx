import { KeptFields } from '@/app/_components/labels/kept-fields';
import { TRAY_LABELS_PATH } from '@/app/_components/labels/labels-address';
import { EmptyState } from '@/app/_components/list/empty-state';
import { formatDate } from '@/app/_format/figures';
import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import type { TrayUnderWay } from '@/lib/server/queries/trays-under-way';

interface Props {
  address: Address;
  trays: readonly TrayUnderWay[];
}

/** The open trays, those set last first: they most likely want labels. */
export function ChooseTrays({ address, trays }: Props) {
  if (trays.length === 0) {
    return (
      <EmptyState>
        <p>No tray is under way. Set a test first: its labels are printed from here.</p>
      </EmptyState>
    );
  }
  const newestFirst = [...trays].sort((one, other) => (one.number < other.number ? 1 : -1));
  return (
    <form action={TRAY_LABELS_PATH} className="grid gap-3">
      <h2>Choose trays</h2>
      <KeptFields address={address} except={['trays']} />
      <ul className="sheet divide-y divide-rule p-0!">
        {newestFirst.map((tray) => (
          <li key={tray.number}>
            <label className="flex min-h-11 cursor-pointer items-center gap-3 px-5 py-2">
              <input type="checkbox" name="trays" value={tray.number} className="size-6 shrink-0 accent-leaf" />
              <span>
                <span className="figures font-bold">{tray.number}</span> <b>{tray.accessionName}</b>{' '}
                <span className="quiet">
                  {tray.cropName}, set {formatDate(tray.setOn)}, {tray.dishes} {tray.dishes === 1 ? 'dish' : 'dishes'}
                  {tray.place && `, ${tray.place}`}
                </span>
              </span>
            </label>
          </li>
        ))}
      </ul>
      <div>
        <button type="submit" className="button main">
          Show their labels
        </button>
      </div>
    </form>
  );
}
