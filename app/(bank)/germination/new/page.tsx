import type { Metadata } from 'next';
import Link from 'next/link';
import { ChooseLot } from '@/app/_components/choose-lot';
import { PageHead } from '@/app/_components/page-head';
import { formatDate } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { newTestQuerySchema } from '@/lib/schemas/germination-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findTestsDueOrComing } from '@/lib/server/queries/germination-tests';
import { findLotsToTest, getLotForTesting } from '@/lib/server/queries/lots-for-testing';
import { today } from '@/lib/server/today';
import { BenchAdvice, TreatedSeed } from '../_parts/bench-advice';
import { MethodCard } from '../_parts/method-card';
import { countHint, methodsOffered } from '../_parts/method-words';
import { packetOptions, takenOutOptions } from '../_parts/packet-options';
import { blankDraft } from '../_parts/replicate-draft';
import { TestForm } from '../_parts/test-form';

export const metadata: Metadata = { title: 'Record a germination test' };

const USUAL_SEEDS = '50';

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function NewTestPage({ searchParams }: Props) {
  await requirePerson('volunteer');
  const query = newTestQuerySchema.parse(await searchParams);
  const typed = query.lot ?? '';
  const lot = typed === '' ? null : await getLotForTesting(typed);
  if (!lot) return <WhichLot typed={typed} />;
  return (
    <>
      <PageHead
        above={
          <>
            {lot.crop.name} · <i>{lot.crop.scientificName}</i>
          </>
        }
        title="Record a germination test"
        below={
          <>
            <b className="text-ink">{lot.accessionName}</b>{' '}
            <Link href={lotPath(lot.number)} className="figures text-ink underline underline-offset-3">
              {lot.number}
            </Link>
            , harvested {formatDate(lot.harvestedOn)}
          </>
        }
      >
        <Link href="/germination/new" className="button">
          Another lot
        </Link>
      </PageHead>
      <div className="grid gap-6 lg:grid-cols-[minmax(0,1fr)_20rem] lg:grid-rows-[auto_1fr]">
        <div className="grid content-start gap-4 lg:col-start-2">
          <MethodCard crop={lot.crop} />
          {lot.treatment && <TreatedSeed treatment={lot.treatment} />}
        </div>
        <div className="min-w-0 lg:col-start-1 lg:row-span-2 lg:row-start-1">
          <TestForm
            lotNumber={lot.number}
            today={today()}
            packets={packetOptions(lot.packets)}
            takenOut={takenOutOptions(lot.takenOut)}
            methodsOffered={methodsOffered(lot.crop.methods)}
            countHint={countHint(lot.crop.methods)}
            replicates={Array.from({ length: query.replicates }, () => blankDraft(USUAL_SEEDS))}
            addressWithoutReplicates={`/germination/new?lot=${encodeURIComponent(lot.number)}&`}
          />
        </div>
        <aside className="lg:col-start-2">
          <BenchAdvice crop={lot.crop} />
        </aside>
      </div>
    </>
  );
}

async function WhichLot({ typed }: { typed: string }) {
  const choices =
    typed === '' ? (await findTestsDueOrComing({ today: today() })).rows.map(asChoice) : await findLotsToTest(typed);
  return (
    <>
      <PageHead title="Record a germination test" below="First the lot." />
      <ChooseLot
        action="/germination/new"
        typed={typed}
        choices={choices}
        title={typed === '' ? 'Tests due' : 'Which of these?'}
      />
    </>
  );
}

const asChoice = ({ lotNumber, ...lot }: Awaited<ReturnType<typeof findTestsDueOrComing>>['rows'][number]) => ({
  ...lot,
  number: lotNumber,
});
