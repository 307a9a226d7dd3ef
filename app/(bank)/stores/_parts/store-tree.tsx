import { ClimateMark } from '@/app/_components/climate-mark';
import { RowLink } from '@/app/_components/list/row-link';
import { ScrollBox } from '@/app/_components/scroll-box';
import { readingsInWords, targetInWords } from '@/app/_format/climate';
import { formatCount } from '@/app/_format/figures';
import { storePath } from '@/app/_format/store-path';
import { STORE_KINDS } from '@/lib/domain/stock/store-kinds';
import { climateSources } from '@/lib/server/queries/climate-source';
import type { StorePlace } from '@/lib/server/queries/stores';

/** rem by which each store is set in from the one that it lies in */
const INDENT_REM = 1.5;

export const kindLabel = (key: string) => STORE_KINDS.find((kind) => kind.key === key)?.label ?? key;

/** Stores in the order of their nesting: what stands in a store follows it. */
export function StoreTree({ stores, called }: { stores: StorePlace[]; called: string }) {
  const sources = climateSources();
  return (
    <ScrollBox label={called} className="sheet p-0!">
      <table className="ledger stacked">
        <thead>
          <tr>
            <th scope="col">Store</th>
            <th scope="col">Kind</th>
            <th scope="col">Meant to be</th>
            <th scope="col">Climate</th>
            <th scope="col" className="number">
              Packets
            </th>
          </tr>
        </thead>
        <tbody>
          {stores.map((store) => {
            const source = sources.get(store.id);
            return (
              <tr key={store.id}>
                <th scope="row" className="row-head">
                  <span className="block" style={{ paddingInlineStart: `${store.depth * INDENT_REM}rem` }}>
                    {store.depth > 0 && (
                      <span aria-hidden className="quiet -ml-5 mr-1 font-normal">
                        ↳
                      </span>
                    )}
                    <RowLink href={storePath(store.id)}>{store.name}</RowLink>
                    {store.closedOn && <span className="quiet font-normal"> no longer used</span>}
                  </span>
                </th>
                <td data-label="kind">{kindLabel(store.kind)}</td>
                <td data-label="meant to be">
                  {targetInWords(store)}
                  {store.inheritsTarget && <span className="label block">as what it lies in</span>}
                </td>
                <td data-label="climate">
                  {source && <ClimateMark source={source} />}
                  {store.readings && <span className="label block">{readingsInWords(store.readings)}</span>}
                </td>
                <td className="number" data-label="packets">
                  <PacketsAndRoom store={store} />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </ScrollBox>
  );
}

function PacketsAndRoom({ store: { packets, capacityPackets } }: { store: StorePlace }) {
  if (capacityPackets === null) return formatCount(packets);
  const isFull = packets >= capacityPackets;
  return (
    <>
      {formatCount(packets)}
      <span className="quiet"> of {formatCount(capacityPackets)}</span>
      {isFull && <b className="block text-madder">full</b>}
    </>
  );
}
