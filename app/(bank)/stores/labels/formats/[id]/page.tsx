import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findOwnFormats } from '@/lib/server/queries/label-formats';
import { FormatFields } from '../_parts/format-fields';
import { changeFormat, removeFormat } from '../actions';

export const metadata: Metadata = { title: 'Change a label size' };

interface Props {
  params: Promise<{ id: string }>;
}

export default async function EditLabelFormatPage({ params }: Props) {
  await requirePerson('steward');
  const { id } = await params;
  const format = (await findOwnFormats()).find((own) => own.id === id);
  if (!format) notFound();
  return (
    <>
      <PageHead above={<Link href="/stores/labels/formats">Label sizes</Link>} title={format.name} />
      <Form action={changeFormat} className="sheet grid gap-5">
        <HiddenField name="id" value={format.id} />
        <VersionField version={format.version} />
        <FormatFields format={format} />
        <div>
          <SubmitButton>Save</SubmitButton>
        </div>
      </Form>
      <Form action={removeFormat} className="sheet grid max-w-2xl gap-3">
        <h2>Remove it</h2>
        <p>Labels that were printed with it stay good.</p>
        <HiddenField name="id" value={format.id} />
        <VersionField version={format.version} />
        <div>
          <SubmitButton quiet busy="Removing …">
            Remove this size
          </SubmitButton>
        </div>
      </Form>
    </>
  );
}
