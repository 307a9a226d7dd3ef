import type { Metadata } from 'next';
import Link from 'next/link';
import { SelectField, TextAreaField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import { formatCount, formatDate } from '@/app/_format/figures';
import { stockTakePath } from '@/app/_format/stock-take-path';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findStockTakes } from '@/lib/server/queries/stock-takes';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { StoresTabs } from '../_parts/stores-tabs';
import { startCounting } from './actions';

export const metadata: Metadata = { title: 'Stock-take' };

interface Props {
  searchParams: Promise<{ store?: string | string[] }>;
}

export default async function StockTakesPage({ searchParams }: Props) {
  const person = await requirePerson('visitor');
  const [takes, stores, { store }] = await Promise.all([findStockTakes(), findStoreChoices(), searchParams]);
  const mayCount = mayActAs(person, 'volunteer');
  return (
    <>
      <PageHead
        title="Stock-take"
        below="Go through a store and see whether what lies there is what the ledger says."
      />
      <StoresTabs here="stock-takes" />
      {takes.length === 0 ? (
        <EmptyState>
          <p className="say">
            No stock-take yet. Once a year is common practice; a freezer that failed is a good reason.
          </p>
        </EmptyState>
      ) : (
        <div className="sheet overflow-x-auto p-0!">
          <table className="ledger stacked">
            <caption className="sr-only">Stock-takes, open ones first</caption>
            <thead>
              <tr>
                <th scope="col">Stock-take</th>
                <th scope="col">Store</th>
                <th scope="col">Started</th>
                <th scope="col">State</th>
                <th scope="col" className="number">
                  Looked at
                </th>
              </tr>
            </thead>
            <tbody>
              {takes.map((take) => (
                <tr key={take.id}>
                  <th scope="row" className="row-head">
                    <Link
                      href={stockTakePath(take.number)}
                      className="figures text-ink underline decoration-rule underline-offset-3"
                    >
                      {take.number}
                    </Link>
                  </th>
                  <td data-label="store" className="wrap-anywhere">
                    {take.storeName}
                  </td>
                  <td data-label="started">
                    {formatDate(take.startedOn)}
                    {take.byName && <span className="label block">{take.byName}</span>}
                  </td>
                  <td data-label="state">
                    {take.status === 'open' ? <b>open</b> : take.status === 'closed' ? 'closed' : 'given up'}
                    {take.closedOn && <span className="label block">{formatDate(take.closedOn)}</span>}
                  </td>
                  <td className="number" data-label="looked at">
                    {formatCount(take.lines)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {mayCount && stores.length > 0 && (
        <section className="grid gap-3" aria-labelledby="start">
          <h2 id="start">Start one</h2>
          <Form action={startCounting} className="sheet grid max-w-2xl gap-5">
            <SelectField
              name="storeId"
              label="Store"
              hint="What stands in it is gone through too. Several people can count at once, each with a phone."
              empty="Choose …"
              options={stores.map(({ id, name }) => ({ value: id, label: name }))}
              defaultValue={typeof store === 'string' ? store : undefined}
            />
            <TextAreaField name="notes" label="Notes" optional rows={2} />
            <div>
              <SubmitButton busy="Starting …">Start</SubmitButton>
            </div>
          </Form>
        </section>
      )}
    </>
  );
}
