import type { Metadata } from 'next';
import Link from 'next/link';
import { Cautions } from '@/app/_components/cautions';
import { AnywayField } from '@/app/_components/form/anyway-field';
import { DateField, SelectField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { EmptyState } from '@/app/_components/list/empty-state';
import { formatCount } from '@/app/_format/figures';
import { containerLabel, pathInWords } from '@/app/_format/packet-words';
import { packetPath } from '@/app/_format/store-path';
import { packetRoleLabel } from '@/lib/domain/stock/packet-roles';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findStock, type StockedPacket } from '@/lib/server/queries/stock';
import { today } from '@/lib/server/today';
import { cautionsOf, PacketFormPage } from '../../_parts/packet-form-page';
import { type PacketProps, packetOfAddress } from '../../_parts/packet-of-address';
import { pourTogether } from '../../actions';

export const metadata: Metadata = { title: 'Merge packets' };

export default async function MergePacketsPage(props: PacketProps) {
  await requirePerson('volunteer');
  const packet = await packetOfAddress(props);
  const ofLot = await findStock({ lotIds: [packet.lot.id] });
  const others = ofLot.filter(({ id, seeds }) => id !== packet.id && seeds > 0);
  const day = today();
  const options = ofLot.map((one) => ({ value: one.id, label: inWords(one) }));
  return (
    <PacketFormPage
      packet={packet}
      title="Merge"
      about="One packet is emptied into another one of the same lot. The packet that is kept tells the forecast what all the seed has been through, so keep the one that aged more: the warmer, moister, longer opened one."
    >
      {others.length === 0 ? (
        <EmptyState>
          <p>
            No other packet of lot {packet.lot.number} holds seed.{' '}
            <Link href={packetPath(packet.number)}>Back to the packet</Link>
          </p>
        </EmptyState>
      ) : (
        <Form action={pourTogether} className="sheet grid max-w-2xl gap-5">
          <div className="grid gap-2">
            <SelectField name="packetId" label="Keep" options={options} defaultValue={packet.id} />
            <AnywayField name="keepAnyway" label="Keep it anyway" />
          </div>
          <div className="grid gap-2">
            <SelectField name="otherPacketId" label="Empty into it" options={options} defaultValue={others[0]?.id} />
            <AnywayField name="loseDuplicate" label="The lot shall have no safety duplicate" />
          </div>
          <DateField name="on" label="On" max={day} defaultValue={day} />
          <Cautions keys={cautionsOf(packet)} />
          <div>
            <SubmitButton>Merge them</SubmitButton>
          </div>
        </Form>
      )}
    </PacketFormPage>
  );
}

const inWords = ({ number, seeds, role, place, container }: StockedPacket) =>
  [
    `${number}: ${formatCount(seeds)} seeds`,
    packetRoleLabel(role),
    pathInWords(place),
    container && containerLabel(container),
  ]
    .filter(Boolean)
    .join(', ');
