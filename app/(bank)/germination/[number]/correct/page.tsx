import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { testPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { SEED_CLASSES } from '@/lib/domain/germination/seed-classes';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getGerminationTest } from '@/lib/server/queries/germination-test-detail';
import { getLotForTesting } from '@/lib/server/queries/lots-for-testing';
import { today } from '@/lib/server/today';
import { CorrectingTest } from '../../_parts/correcting-test';
import { countHint, methodsOffered } from '../../_parts/method-words';
import { packetOptions } from '../../_parts/packet-options';
import type { ReplicateDraft } from '../../_parts/replicate-draft';
import { TestForm } from '../../_parts/test-form';

interface Props {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Correct ${readParameter((await params).number)}` };
}

export default async function CorrectTestPage({ params }: Props) {
  await requirePerson('volunteer');
  const test = await getGerminationTest(readParameter((await params).number));
  const lot = test && (await getLotForTesting(test.lot.number));
  if (!test || !lot) notFound();
  return (
    <CorrectingTest test={test} path={testPath}>
      <div className="max-w-3xl">
        <TestForm
          lotNumber={lot.number}
          today={today()}
          packets={packetOptions(lot.packets)}
          methodsOffered={methodsOffered(test.crop.methods)}
          countHint={countHint(test.crop.methods)}
          replicates={test.replicates.map(asDraft)}
          addressWithoutReplicates={null}
          correcting={{
            id: test.id,
            number: test.number,
            setOn: test.setOn,
            finishedOn: test.finishedOn,
            packetId: test.packet?.id ?? null,
            method: test.method,
            notes: test.notes,
          }}
        />
      </div>
    </CorrectingTest>
  );
}

function asDraft(replicate: Record<keyof ReplicateDraft, number>): ReplicateDraft {
  const draft = { seeds: String(replicate.seeds) } as ReplicateDraft;
  for (const seedClass of SEED_CLASSES) draft[seedClass] = String(replicate[seedClass]);
  return draft;
}
