import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Cautions } from '@/app/_components/cautions';
import { LedgerTable } from '@/app/_components/ledger-table';
import { PageHead } from '@/app/_components/page-head';
import { accessionPath, cropPath, lotPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { packetPath } from '@/app/_format/store-path';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getPacketPage } from '@/lib/server/queries/packet-page';
import { today } from '@/lib/server/today';
import { cautionsOf } from '../_parts/packet-form-page';
import { AtAGlance } from './_parts/at-a-glance';
import { PacketActions } from './_parts/packet-actions';
import { CareDoneList, StayList } from './_parts/packet-past';

interface Props {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Packet ${readParameter((await params).number)}` };
}

/** What a scanned label opens: everything about the packet in hand on one screen of a phone. */
export default async function PacketDetailPage({ params }: Props) {
  const person = await requirePerson('visitor');
  const packet = await getPacketPage(readParameter((await params).number));
  if (!packet) notFound();
  const mayChange = mayActAs(person, 'volunteer');
  const { lot, number } = packet;
  return (
    <>
      <PageHead
        above={
          <>
            <Link href={cropPath(lot.accession.crop.id)} className="text-ink-2 underline underline-offset-3">
              {lot.accession.crop.name}
            </Link>{' '}
            · lot{' '}
            <Link href={lotPath(lot.number)} className="figures text-ink-2 underline underline-offset-3">
              {lot.number}
            </Link>{' '}
            · accession{' '}
            <Link
              href={accessionPath(lot.accession.number)}
              className="figures text-ink-2 underline underline-offset-3"
            >
              {lot.accession.number}
            </Link>
          </>
        }
        title={
          <>
            {lot.accession.name} <span className="figures font-medium whitespace-nowrap">{number}</span>
          </>
        }
      />
      <AtAGlance packet={packet} today={today()} />
      {mayChange && <PacketActions packet={packet} />}
      <Cautions keys={cautionsOf(packet)} />
      <StayList stays={packet.stays} />
      <CareDoneList lines={packet.careDone} />
      <section className="grid gap-3" aria-labelledby="ledger">
        <h2 id="ledger">Ledger</h2>
        <div className="sheet overflow-x-auto p-0!">
          <LedgerTable
            lines={packet.ledger}
            caption={`Ledger of packet ${number}, oldest entry first`}
            mayChange={mayChange}
            back={packetPath(number)}
          />
        </div>
      </section>
    </>
  );
}
