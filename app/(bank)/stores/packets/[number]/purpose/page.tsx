import type { Metadata } from 'next';
import { AnywayField } from '@/app/_components/form/anyway-field';
import { HiddenField, SelectField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { PACKET_ROLES, packetRoleLabel } from '@/lib/domain/stock/packet-roles';
import { requirePerson } from '@/lib/server/auth/require-person';
import { PacketFormPage } from '../../_parts/packet-form-page';
import { type PacketProps, packetOfAddress } from '../../_parts/packet-of-address';
import { changePurpose } from '../../actions';

export const metadata: Metadata = { title: 'Change what a packet is for' };

export default async function PacketPurposePage(props: PacketProps) {
  await requirePerson('volunteer');
  const packet = await packetOfAddress(props);
  return (
    <PacketFormPage packet={packet} title="Change purpose of" about={`It is kept as ${packetRoleLabel(packet.role)}.`}>
      <Form action={changePurpose} className="sheet grid max-w-2xl gap-5">
        <HiddenField name="packetId" value={packet.id} />
        <div className="grid gap-2">
          <SelectField
            name="role"
            label="From now on"
            empty="Choose …"
            options={PACKET_ROLES.filter(({ key }) => key !== packet.role).map(({ key, label, does }) => ({
              value: key,
              label: `${label}: ${does}`,
            }))}
          />
          <AnywayField name="loseDuplicate" label="The lot shall have no safety duplicate" />
        </div>
        <div>
          <SubmitButton>Change it</SubmitButton>
        </div>
      </Form>
    </PacketFormPage>
  );
}
