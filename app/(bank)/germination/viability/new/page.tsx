import type { Metadata } from 'next';
import Link from 'next/link';
import { ChooseLot } from '@/app/_components/choose-lot';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { Tabs } from '@/app/_components/tabs';
import { formatDate } from '@/app/_format/figures';
import { lotPath, testPath } from '@/app/_format/links';
import { VIABILITY_KINDS, type ViabilityKind } from '@/lib/domain/germination/dormancy/viability-kinds';
import { newViabilityTestQuery } from '@/lib/schemas/viability-test';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findTraysOfLot, getTrayToExamine, type TrayChoice } from '@/lib/server/queries/lot-for-viability';
import { findLotsToTest, getLotForTesting, type LotForTesting } from '@/lib/server/queries/lots-for-testing';
import { today } from '@/lib/server/today';
import { TreatedSeed } from '../../_parts/bench-advice';
import { packetOptions, takenOutOptions } from '../../_parts/packet-options';
import { ViabilityForm } from '../_parts/viability-form';
import { WorkCautions } from '../_parts/work-cautions';

export const metadata: Metadata = { title: 'Record a viability test' };

const PATH = '/germination/viability/new';
const KIND_TABS: Record<ViabilityKind, string> = { tetrazolium: 'Tetrazolium', cut: 'Cut' };

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function NewViabilityTestPage({ searchParams }: Props) {
  await requirePerson('volunteer');
  const query = newViabilityTestQuery.parse(await searchParams);
  const tray = query.tray ? await getTrayToExamine(query.tray) : null;
  const typed = query.lot || tray?.lotNumber || '';
  const lot = typed === '' ? null : await getLotForTesting(typed);
  if (!lot) return <WhichLot typed={typed} />;
  const examined = tray?.lotNumber === lot.number ? tray : null;
  const trays = examined ? [] : await findTraysOfLot(lot.number);
  const of = `lot=${encodeURIComponent(lot.number)}${examined ? `&tray=${encodeURIComponent(examined.number)}` : ''}`;
  return (
    <>
      <PageHead
        above={
          <>
            {lot.crop.name} · <i>{lot.crop.scientificName}</i>
          </>
        }
        title="Record a viability test"
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
        <Link href={PATH} className="button">
          Another lot
        </Link>
      </PageHead>
      <Tabs
        tabs={VIABILITY_KINDS.map((kind) => ({
          key: kind,
          label: KIND_TABS[kind],
          href: `${PATH}?kind=${kind}&${of}`,
        }))}
        here={query.kind}
        called="Kinds of viability test"
      />
      {query.tray && !examined && (
        <Notice kind="caution">
          There is no germination test {query.tray} of lot {lot.number} that was set as a tray: this is about seed from
          a packet.
        </Notice>
      )}
      <div className="grid items-start gap-6 lg:grid-cols-[minmax(0,1fr)_22rem]">
        <div className="grid min-w-0 gap-4 lg:col-start-2 lg:row-start-1">
          <WorkCautions kind={query.kind} />
          {lot.treatment && <TreatedSeed treatment={lot.treatment} />}
        </div>
        <div className="grid min-w-0 gap-4 lg:col-start-1 lg:row-start-1">
          <WhichSeed lot={lot} kind={query.kind} trays={trays} examined={examined} />
          <ViabilityForm
            key={query.kind}
            lotNumber={lot.number}
            kind={query.kind}
            today={today()}
            packets={packetOptions(lot.packets)}
            takenOut={takenOutOptions(lot.takenOut)}
            tray={examined && { id: examined.id, number: examined.number, left: leftIn(examined) }}
          />
        </div>
      </div>
    </>
  );
}

type Examined = NonNullable<Awaited<ReturnType<typeof getTrayToExamine>>>;

const leftIn = ({ hardOrFresh, unclassed, examined }: Examined) =>
  Math.max(0, hardOrFresh + unclassed - examined.reduce((sum, test) => sum + test.seeds, 0));

/** Seed of a packet, or what a germination test left over: said before the form, since it changes what is asked. */
function WhichSeed({
  lot,
  kind,
  trays,
  examined,
}: {
  lot: LotForTesting;
  kind: ViabilityKind;
  trays: TrayChoice[];
  examined: Examined | null;
}) {
  const href = (tray?: string) =>
    `${PATH}?kind=${kind}&lot=${encodeURIComponent(lot.number)}${tray ? `&tray=${encodeURIComponent(tray)}` : ''}`;
  if (examined) {
    return (
      <Notice kind="note">
        <p className="max-w-prose">
          Seed left over in <Link href={testPath(examined.number)}>{examined.number}</Link>: hard, fresh, or not classed
          yet. Pick it blindly.
        </p>
        <Link href={href()} className="inline-flex min-h-11 items-center">
          Seed from a packet instead
        </Link>
      </Notice>
    );
  }
  if (trays.length === 0) return null;
  return (
    <Notice kind="note">
      <p>Was it seed left over in a germination test?</p>
      <ul className="flex flex-wrap gap-x-5">
        {trays.map(({ number, setOn }) => (
          <li key={number}>
            <Link href={href(number)} className="inline-flex min-h-11 items-center">
              <span>
                <span className="figures">{number}</span>, set {formatDate(setOn)}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </Notice>
  );
}

async function WhichLot({ typed }: { typed: string }) {
  return (
    <>
      <PageHead title="Record a viability test" below="Tetrazolium or a cut. First the lot." />
      <ChooseLot
        action={PATH}
        typed={typed}
        choices={typed === '' ? [] : await findLotsToTest(typed)}
        title="Which of these?"
      />
    </>
  );
}
