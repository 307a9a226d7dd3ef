import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Cautions } from '@/app/_components/cautions';
import { DateField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { PageHead } from '@/app/_components/page-head';
import { formatDate } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getLotPacketsByNumber } from '@/lib/server/queries/packets';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { today } from '@/lib/server/today';
import { choosePacket, PacketField } from '../../_parts/packet-field';
import { PlacementFields } from '../../_parts/placement-fields';
import { putElsewhere } from '../../actions';

export const metadata: Metadata = { title: 'Move a packet' };

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<{ packet?: string | string[] }>;
}

export default async function MovePacketPage({ params, searchParams }: Props) {
  await requirePerson('volunteer');
  const [{ packet: asked }, lot, stores] = await Promise.all([
    searchParams,
    params.then(({ number }) => getLotPacketsByNumber(readParameter(number))),
    findStoreChoices(),
  ]);
  if (!lot) notFound();
  const packet = choosePacket(lot.packets, asked);
  if (!packet) notFound();
  const { placement } = packet;
  return (
    <>
      <PageHead
        above={
          <Link href={lotPath(lot.number)}>
            {lot.accession.name} {lot.number}
          </Link>
        }
        title={
          <>
            Move packet <span className="figures font-normal">{packet.number}</span>
          </>
        }
        below={
          placement &&
          `In ${placement.storeName} since ${formatDate(placement.from)}. Where it was stays in its history and counts in the forecast.`
        }
      />
      <Form action={putElsewhere} className="sheet grid max-w-2xl gap-5">
        <PacketField packets={lot.packets} chosen={packet} />
        <PlacementFields stores={stores} placement={placement} />
        <DateField name="from" label="From" max={today()} defaultValue={today()} />
        <Cautions keys={['freezing-moist-seed', 'warm-before-opening']} />
        <div>
          <SubmitButton>Move it</SubmitButton>
        </div>
      </Form>
    </>
  );
}
