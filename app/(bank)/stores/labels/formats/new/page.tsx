import type { Metadata } from 'next';
import Link from 'next/link';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { FormatFields } from '../_parts/format-fields';
import { addFormat } from '../actions';

export const metadata: Metadata = { title: 'Add a label size' };

export default async function NewLabelFormatPage() {
  await requirePerson('steward');
  return (
    <>
      <PageHead above={<Link href="/stores/labels/formats">Label sizes</Link>} title="Add a label size" />
      <Form action={addFormat} className="sheet grid gap-5">
        <FormatFields />
        <div>
          <SubmitButton>Add it</SubmitButton>
        </div>
      </Form>
    </>
  );
}
