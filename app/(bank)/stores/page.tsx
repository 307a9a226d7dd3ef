import type { Metadata } from 'next';
import Link from 'next/link';
import { Cautions } from '@/app/_components/cautions';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import { readingsInWords, targetInWords } from '@/app/_format/climate';
import { formatCount } from '@/app/_format/figures';
import { storePath } from '@/app/_format/store-path';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findStores } from '@/lib/server/queries/stores';

export const metadata: Metadata = { title: 'Stores' };

/** rem by which each store is set in from the one that it lies in */
const INDENT_REM = 1.5;

export default async function StoresPage() {
  const person = await requirePerson('visitor');
  const stores = await findStores();
  return (
    <>
      <PageHead title="Stores" below="Where packets lie, and how cold and dry it is there.">
        {mayActAs(person, 'steward') && stores.length > 0 && (
          <Link href="/stores/new" className="button">
            Add a store
          </Link>
        )}
      </PageHead>
      {stores.length === 0 ? (
        <EmptyState>
          <p className="say">No store yet. Name the freezer, fridge or room first, then the shelves and boxes in it.</p>
          <Link href="/stores/new" className="button main">
            Add the first one
          </Link>
        </EmptyState>
      ) : (
        <div className="sheet overflow-x-auto p-0!">
          <table className="ledger stacked">
            <thead>
              <tr>
                <th scope="col">Store</th>
                <th scope="col">Kind</th>
                <th scope="col">Meant to be</th>
                <th scope="col">Logged</th>
                <th scope="col" className="number">
                  Packets
                </th>
              </tr>
            </thead>
            <tbody>
              {stores.map((store) => (
                <tr key={store.id}>
                  <th scope="row" className="row-head">
                    <span className="block" style={{ paddingInlineStart: `${store.depth * INDENT_REM}rem` }}>
                      {store.depth > 0 && (
                        <span aria-hidden className="quiet -ml-5 mr-1 font-normal">
                          ↳
                        </span>
                      )}
                      <Link
                        href={storePath(store.id)}
                        className="wrap-anywhere font-bold text-ink underline decoration-rule underline-offset-3 hover:decoration-ink"
                      >
                        {store.name}
                      </Link>
                    </span>
                  </th>
                  <td data-label="kind">{store.kind}</td>
                  <td data-label="meant to be">{targetInWords(store)}</td>
                  <td data-label="logged">
                    {store.readings ? (
                      readingsInWords(store.readings)
                    ) : (
                      <span className="quiet">{readingsInWords(null)}</span>
                    )}
                  </td>
                  <td className="number" data-label="packets">
                    {formatCount(store.packets)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <Cautions keys={['warm-before-opening', 'freezing-moist-seed']} />
    </>
  );
}
