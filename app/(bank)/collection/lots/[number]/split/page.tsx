import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Cautions } from '@/app/_components/cautions';
import { DateField, NumberField, SelectField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { PACKET_ROLES } from '@/lib/domain/stock/packet-roles';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getLotPacketsByNumber } from '@/lib/server/queries/packets';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { today } from '@/lib/server/today';
import { choosePacket, PacketField } from '../../_parts/packet-field';
import { PlacementFields } from '../../_parts/placement-fields';
import { splitOff } from '../../actions';

export const metadata: Metadata = { title: 'Split a packet' };

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<{ packet?: string | string[] }>;
}

export default async function SplitPacketPage({ params, searchParams }: Props) {
  await requirePerson('volunteer');
  const [{ packet: asked }, lot, stores] = await Promise.all([
    searchParams,
    params.then(({ number }) => getLotPacketsByNumber(readParameter(number))),
    findStoreChoices(),
  ]);
  if (!lot) notFound();
  const packet = choosePacket(lot.packets, asked);
  if (!packet) notFound();
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
            Split packet <span className="figures font-normal">{packet.number}</span>
          </>
        }
        below={`It holds about ${formatCount(packet.seeds)} seeds. The new packet takes its storage history with it.`}
      />
      <Form action={splitOff} className="sheet grid max-w-2xl gap-5">
        <PacketField packets={lot.packets} chosen={packet} />
        <NumberField name="seeds" label="Seeds for the new packet" whole />
        <SelectField
          name="role"
          label="What the new packet is for"
          defaultValue="safety-duplicate"
          options={PACKET_ROLES.map(({ key, label }) => ({ value: key, label }))}
        />
        <PlacementFields stores={stores} placement={packet.placement} />
        <DateField name="from" label="From" max={today()} defaultValue={today()} />
        <Cautions keys={['freezing-moist-seed', 'warm-before-opening']} />
        <div>
          <SubmitButton>Split it off</SubmitButton>
        </div>
      </Form>
    </>
  );
}
