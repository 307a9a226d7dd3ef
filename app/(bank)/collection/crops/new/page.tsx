import type { Metadata } from 'next';
import Link from 'next/link';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findConstantsChoices } from '@/lib/server/queries/crops';
import { CropFields } from '../_parts/crop-fields';
import { OwnFigureFields } from '../_parts/own-figure-fields';
import { addCrop } from '../actions';

export const metadata: Metadata = { title: 'Add a crop' };

export default async function NewCropPage() {
  await requirePerson('steward');
  const constants = await findConstantsChoices();
  return (
    <>
      <PageHead
        above={<Link href="/collection/crops">Crops</Link>}
        title="Add a crop"
        below="For a crop that the reference does not know."
      />
      <Form action={addCrop} className="sheet grid max-w-2xl gap-5">
        <CropFields />
        <OwnFigureFields constants={constants} />
        <div>
          <SubmitButton>Add the crop</SubmitButton>
        </div>
      </Form>
    </>
  );
}
