import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { PageHead } from '@/app/_components/page-head';
import { cropPath } from '@/app/_format/links';
import { getCropFacts } from '@/lib/domain/reference/all-crops';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findConstantsChoices, getCrop } from '@/lib/server/queries/crops';
import { CropFields } from '../../_parts/crop-fields';
import { OwnFigureFields } from '../../_parts/own-figure-fields';
import { changeCrop } from '../../actions';

export const metadata: Metadata = { title: 'Change a crop' };

interface Props {
  params: Promise<{ id: string }>;
}

export default async function EditCropPage({ params }: Props) {
  await requirePerson('steward');
  const [crop, constants] = await Promise.all([getCrop((await params).id), findConstantsChoices()]);
  if (!crop) notFound();
  return (
    <>
      <PageHead
        above={<Link href={cropPath(crop.id)}>{crop.name}</Link>}
        title={`The bank's own figures for ${crop.name.toLowerCase()}`}
        below="They win over the reference. Empty: the reference and the bank's general rules decide."
      />
      <Form action={changeCrop} className="sheet grid max-w-2xl gap-5">
        <HiddenField name="id" value={crop.id} />
        <VersionField version={crop.version} />
        {!getCropFacts(crop.name) && <CropFields crop={crop} />}
        <OwnFigureFields constants={constants} crop={crop} />
        <div>
          <SubmitButton>Save</SubmitButton>
        </div>
      </Form>
    </>
  );
}
