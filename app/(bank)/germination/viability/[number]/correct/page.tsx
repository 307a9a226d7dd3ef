import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { viabilityTestPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getLotForTesting } from '@/lib/server/queries/lots-for-testing';
import { getViabilityTest, type ViabilityTestDetail } from '@/lib/server/queries/viability-test-detail';
import { today } from '@/lib/server/today';
import { CorrectingTest } from '../../../_parts/correcting-test';
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
    <CorrectingTest test={test} path={viabilityTestPath}>
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
    </CorrectingTest>
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
