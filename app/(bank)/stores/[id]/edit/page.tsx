import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { PageHead } from '@/app/_components/page-head';
import { storePath } from '@/app/_format/store-path';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getStore } from '@/lib/server/queries/stores';
import { StoreFields } from '../../_parts/store-fields';
import { changeStore } from '../../actions';

export const metadata: Metadata = { title: 'Change a store' };

interface Props {
  params: Promise<{ id: string }>;
}

export default async function EditStorePage({ params }: Props) {
  await requirePerson('steward');
  const store = await getStore((await params).id);
  if (!store) notFound();
  return (
    <>
      <PageHead
        above={<Link href={storePath(store.id)}>{store.name}</Link>}
        title="Change a store"
        below="What it is meant to be counts wherever nothing was logged: lots that lay here are judged anew."
      />
      <Form action={changeStore} className="sheet grid max-w-2xl gap-5">
        <HiddenField name="id" value={store.id} />
        <VersionField version={store.version} />
        <StoreFields store={store} />
        <div>
          <SubmitButton>Save</SubmitButton>
        </div>
      </Form>
    </>
  );
}
