import { KeptFields } from '@/app/_components/labels/kept-fields';
import { LABELS_PATH, labelsHref, readLabelsAddress } from '@/app/_components/labels/labels-address';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Pager } from '@/app/_components/list/pager';
import { StoreFilter } from '@/app/_components/list/usual-filters';
import { ScrollBox } from '@/app/_components/scroll-box';
import { formatCount } from '@/app/_format/figures';
import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import type { ListPage } from '@/lib/server/queries/list-page';
import type { PacketToLabel } from '@/lib/server/queries/packet-labels';
import type { StoreChoice } from '@/lib/server/queries/stores';

interface Props {
  address: Address;
  found: ListPage<PacketToLabel>;
  stores: readonly StoreChoice[];
  chosen: ReadonlySet<string>;
}

/** Looks packets up and adds those that are ticked, or all that were found, to the labels to be printed. */
export function FindPackets({ address, found, stores, chosen }: Props) {
  const { q, store, lots } = readLabelsAddress(address);
  const narrowed = q !== '' || store !== '' || lots.length > 0;
  return (
    <section className="grid gap-3" aria-labelledby="find-packets">
      <h2 id="find-packets">Choose packets</h2>
      <form
        action={LABELS_PATH}
        className="grid grid-cols-2 items-end gap-3 sm:flex sm:flex-wrap"
        key={`${q} ${store}`}
      >
        <KeptFields address={address} except={['q', 'store', 'lots']} />
        <label className="col-span-2 grid gap-1">
          <span className="label">Find by name, crop, lot or packet number</span>
          <input name="q" type="search" defaultValue={q} autoComplete="off" className="field sm:w-64!" />
        </label>
        <StoreFilter label="Lying in" stores={stores} chosen={store} />
        <button type="submit" className="button">
          Find
        </button>
      </form>
      {found.rows.length === 0 ? (
        <EmptyState>
          <p>No packet with seed in it was found. Try fewer words, or all stores.</p>
        </EmptyState>
      ) : (
        <form action={LABELS_PATH} className="grid gap-3">
          <KeptFields address={address} except={[]} />
          <p className="quiet text-sm">
            {narrowed
              ? `${formatCount(found.total)} ${found.total === 1 ? 'packet' : 'packets'} found`
              : 'The newest packets. Find others by name or store.'}
          </p>
          <ScrollBox label="Packets found" className="sheet max-h-96 overflow-auto p-0!">
            <table className="ledger stacked">
              <thead>
                <tr>
                  <th scope="col">Packet</th>
                  <th scope="col">Lot</th>
                  <th scope="col">Lies in</th>
                  <th scope="col" className="number">
                    Seeds
                  </th>
                </tr>
              </thead>
              <tbody>
                {found.rows.map((row) => (
                  <tr key={row.packetNumber}>
                    <th scope="row" className="row-head">
                      <PacketTick row={row} isChosen={chosen.has(row.packetNumber)} />
                    </th>
                    <td className="figures whitespace-nowrap" data-label="lot">
                      {row.lotNumber}
                    </td>
                    <td data-label="lies in">{row.place ?? '–'}</td>
                    <td className="number" data-label="seeds">
                      {formatCount(row.seeds)}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollBox>
          <div className="flex flex-wrap items-center gap-2">
            <button type="submit" className="button">
              Add the ticked
            </button>
            {narrowed && found.total > 1 && (
              <button type="submit" name="all" value="1" className="button">
                Add all {formatCount(found.total)} found
              </button>
            )}
          </div>
          <Pager
            label="Pages of packets"
            page={found.page}
            pages={found.pages}
            href={(page) => labelsHref(address, { page })}
          />
        </form>
      )}
    </section>
  );
}

function PacketTick({ row, isChosen }: { row: PacketToLabel; isChosen: boolean }) {
  const words = (
    <span>
      <span className="font-bold">{row.accessionName}</span> <span className="quiet">{row.cropName}</span>
      <span className="figures block text-sm">
        {row.packetNumber}
        {isChosen && <span className="quiet"> chosen</span>}
      </span>
    </span>
  );
  if (isChosen) {
    return (
      <div className="flex min-h-11 items-center gap-3 font-normal">
        <span className="grid size-6 shrink-0 place-items-center font-bold" aria-hidden>
          ✓
        </span>
        {words}
      </div>
    );
  }
  return (
    <label className="flex min-h-11 items-center gap-3 font-normal">
      <input type="checkbox" name="add" value={row.packetNumber} className="size-6 shrink-0 accent-leaf" />
      {words}
    </label>
  );
}
