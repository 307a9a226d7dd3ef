import type { Metadata } from 'next';
import Link from 'next/link';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findCropChoices } from '@/lib/server/queries/crops';
import { ExperimentForm } from '../_parts/experiment-form';

export const metadata: Metadata = { title: 'Add a storage experiment' };

export default async function NewExperimentPage() {
  await requirePerson('steward');
  const crops = await findCropChoices();
  return (
    <>
      <PageHead
        above={<Link href="/reference/storage-experiments">Storage experiments</Link>}
        title="Add a storage experiment"
        below="Paste the counts or choose a file. All rows are taken in, or none, with every problem named."
      />
      <ExperimentForm crops={crops} />
    </>
  );
}
