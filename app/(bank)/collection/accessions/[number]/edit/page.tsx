import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { PageHead } from '@/app/_components/page-head';
import { accessionPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getAccession } from '@/lib/server/queries/accessions';
import { findCropChoices } from '@/lib/server/queries/crops';
import { today } from '@/lib/server/today';
import { AccessionFields } from '../../_parts/accession-fields';
import { changeAccession } from '../../actions';

export const metadata: Metadata = { title: 'Change an accession' };

interface Props {
  params: Promise<{ number: string }>;
}

export default async function EditAccessionPage({ params }: Props) {
  await requirePerson('steward');
  const [accession, crops] = await Promise.all([getAccession(readParameter((await params).number)), findCropChoices()]);
  if (!accession) notFound();
  return (
    <>
      <PageHead
        above={<Link href={accessionPath(accession.number)}>{accession.name}</Link>}
        title={
          <>
            Change accession <span className="figures font-normal">{accession.number}</span>
          </>
        }
      />
      <Form action={changeAccession} className="sheet grid max-w-2xl gap-5">
        <HiddenField name="id" value={accession.id} />
        <VersionField version={accession.version} />
        <AccessionFields crops={crops} today={today()} accession={{ ...accession, cropId: accession.crop.id }} />
        <div>
          <SubmitButton>Save</SubmitButton>
        </div>
      </Form>
    </>
  );
}
