import type { Metadata } from 'next';
import Link from 'next/link';
import { Cautions } from '@/app/_components/cautions';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findStores } from '@/lib/server/queries/stores';
import { StoreTree } from './_parts/store-tree';
import { StoresTabs } from './_parts/stores-tabs';

export const metadata: Metadata = { title: 'Stores' };

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
      <StoresTabs here="places" />
      {stores.length === 0 ? (
        <EmptyState>
          <p className="say">No store yet. Name the freezer, fridge or room first, then the shelves and boxes in it.</p>
          <Link href="/stores/new" className="button main">
            Add the first one
          </Link>
        </EmptyState>
      ) : (
        <StoreTree stores={stores} called="Stores" />
      )}
      <Cautions keys={['warm-before-opening', 'freezing-moist-seed']} />
    </>
  );
}
