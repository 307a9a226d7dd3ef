import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { PageHead } from '@/app/_components/page-head';
import { dryingPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { requirePerson } from '@/lib/server/auth/require-person';
import { localMinute } from '@/lib/server/local-time';
import { getLastWeighing, getWeighing } from '@/lib/server/queries/drying-runs';
import { CorrectWeighingForm } from '../../_parts/weigh-form';

export const metadata: Metadata = { title: 'Correct a weighing' };

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<{ weighing?: string | string[] }>;
}

export default async function CorrectWeighingPage({ params, searchParams }: Props) {
  await requirePerson('volunteer');
  const number = readParameter((await params).number);
  const { weighing: asked } = await searchParams;
  const weighing = typeof asked === 'string' ? await getWeighing(asked) : await getLastWeighing(number);
  if (weighing?.run.number !== number) notFound();
  return (
    <>
      <PageHead
        above={
          <Link href={dryingPath(number)} className="text-ink underline underline-offset-3">
            Back to {number}
          </Link>
        }
        title="Correct a weighing"
        below="The weighing stays as it was written; what you save here takes its place."
      />
      <CorrectWeighingForm
        weighingId={weighing.id}
        weightG={weighing.weightG}
        at={localMinute(weighing.atEpochSeconds)}
      />
    </>
  );
}
