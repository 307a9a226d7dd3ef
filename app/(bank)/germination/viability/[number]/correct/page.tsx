import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { viabilityTestPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getLotForTesting } from '@/lib/server/queries/lots-for-testing';
import { getViabilityTest, type ViabilityTestDetail } from '@/lib/server/queries/viability-test-detail';
import { today } from '@/lib/server/today';
import { packetOptions } from '../../../_parts/packet-options';
import { ViabilityForm } from '../../_parts/viability-form';
import { WorkCautions } from '../../_parts/work-cautions';

interface Props {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Correct ${readParameter((await params).number)}` };
}

export default async function CorrectViabilityTestPage({ params }: Props) {
  await requirePerson('volunteer');
  const test = await getViabilityTest(readParameter((await params).number));
  const lot = test && (await getLotForTesting(test.lot.number));
  if (!test || !lot) notFound();
  return (
    <>
      <PageHead
        above={
          <Link href={viabilityTestPath(test.number)} className="text-ink underline underline-offset-3">
            Back to {test.number}
          </Link>
        }
        title={
          <>
            Correct <span className="figures font-medium">{test.number}</span>
          </>
        }
        below="The test stays as it was written; what you save here is a new test that takes its place."
      />
      {test.correctedByNumber ? (
        <Notice kind="caution">
          {test.number} has been corrected already. If that is wrong too, correct{' '}
          <Link href={`${viabilityTestPath(test.correctedByNumber)}/correct`}>{test.correctedByNumber}</Link>.
        </Notice>
      ) : (
        <div className="grid max-w-3xl gap-4">
          <WorkCautions kind={test.kind} />
          <ViabilityForm
            lotNumber={lot.number}
            kind={test.kind}
            today={today()}
            packets={packetOptions(lot.packets)}
            tray={test.tray && { id: test.tray.id, number: test.tray.number, left: leftFor(test, test.tray) }}
            correcting={{
              ...{ id: test.id, number: test.number, testedOn: test.testedOn, counts: test.counts },
              ...{ packetId: test.packet?.id ?? null, method: test.method, notes: test.notes },
            }}
          />
        </div>
      )}
    </>
  );
}

/** Seed left over that no other test has examined. */
const leftFor = (test: ViabilityTestDetail, tray: NonNullable<ViabilityTestDetail['tray']>) =>
  Math.max(
    0,
    tray.hardOrFresh +
      tray.unclassed -
      tray.examined.filter(({ id }) => id !== test.id).reduce((sum, other) => sum + other.seeds, 0),
  );
