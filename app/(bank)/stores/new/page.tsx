import type { Metadata } from 'next';
import Link from 'next/link';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { StoreFields } from '../_parts/store-fields';
import { addStore } from '../actions';

export const metadata: Metadata = { title: 'Add a store' };

export default async function NewStorePage() {
  await requirePerson('steward');
  const places = await findStoreChoices();
  return (
    <>
      <PageHead above={<Link href="/stores">Stores</Link>} title="Add a store" />
      <Form action={addStore} className="sheet grid max-w-2xl gap-5">
        <StoreFields places={places} />
        <div>
          <SubmitButton>Add the store</SubmitButton>
        </div>
      </Form>
    </>
  );
}
