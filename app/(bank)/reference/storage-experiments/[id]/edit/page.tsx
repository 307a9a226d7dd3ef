import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { CheckField, HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { PageHead } from '@/app/_components/page-head';
import { experimentPath } from '@/app/_format/experiment-path';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findCropChoices } from '@/lib/server/queries/crops';
import { getStorageExperiment } from '@/lib/server/queries/storage-experiments';
import { ExperimentForm } from '../../_parts/experiment-form';
import { removeExperiment } from '../../actions';

export const metadata: Metadata = { title: 'Change a storage experiment' };

export default async function EditExperimentPage({ params }: { params: Promise<{ id: string }> }) {
  await requirePerson('steward');
  const [experiment, crops] = await Promise.all([getStorageExperiment((await params).id), findCropChoices()]);
  if (!experiment) notFound();
  return (
    <>
      <PageHead
        above={<Link href={experimentPath(experiment.id)}>{experiment.name}</Link>}
        title="Change a storage experiment"
        below="The table takes the place of the earlier one; the log of changes keeps both."
      />
      <ExperimentForm crops={crops} experiment={experiment} />
      <Form action={removeExperiment} className="sheet grid max-w-3xl gap-3">
        <h2>Remove it</h2>
        <p>Constants that were saved from it stay in use, and the log of changes keeps every count.</p>
        <HiddenField name="id" value={experiment.id} />
        <HiddenField name="version" value={experiment.version} />
        <CheckField name="sure" label="Remove this experiment" />
        <div>
          <SubmitButton quiet busy="Removing …">
            Remove
          </SubmitButton>
        </div>
      </Form>
    </>
  );
}
