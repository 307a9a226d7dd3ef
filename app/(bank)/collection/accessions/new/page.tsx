import type { Metadata } from 'next';
import Link from 'next/link';
import { TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findCropChoices } from '@/lib/server/queries/crops';
import { today } from '@/lib/server/today';
import { AccessionFields } from '../_parts/accession-fields';
import { addAccession } from '../actions';

export const metadata: Metadata = { title: 'Add an accession' };

export default async function NewAccessionPage() {
  await requirePerson('steward');
  const crops = await findCropChoices();
  return (
    <>
      <PageHead
        above={<Link href="/collection">Collection</Link>}
        title="Add an accession"
        below="One variety or population that the bank keeps. Its seed is logged afterwards, lot by lot."
      />
      <Form action={addAccession} className="sheet grid max-w-2xl gap-5">
        <AccessionFields crops={crops} today={today()} />
        <TextField
          name="number"
          label="Accession number"
          hint="Empty: the next free number."
          optional
          className="sm:max-w-xs"
        />
        <div>
          <SubmitButton>Add the accession</SubmitButton>
        </div>
      </Form>
    </>
  );
}
