import type { Metadata } from 'next';
import { Cautions } from '@/app/_components/cautions';
import { DateField, HiddenField, SelectField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { containerLabel, sealInWords } from '@/app/_format/packet-words';
import { requirePerson } from '@/lib/server/auth/require-person';
import { today } from '@/lib/server/today';
import { cautionsOf, PacketFormPage } from '../../_parts/packet-form-page';
import { type PacketProps, packetOfAddress } from '../../_parts/packet-of-address';
import { careFor } from '../../actions';

export const metadata: Metadata = { title: 'Seal or open a packet' };

const DONE = [
  { value: 'sealed', label: 'it was sealed' },
  { value: 'opened', label: 'it was opened, and stands open' },
];

export default async function SealPacketPage(props: PacketProps) {
  await requirePerson('volunteer');
  const packet = await packetOfAddress(props);
  const { container, care } = packet;
  const now = container && sealInWords(container, care);
  const day = today();
  return (
    <PacketFormPage
      packet={packet}
      title="Seal or open"
      about={
        <>
          {now ? `${containerLabel(container)}: ${now}. ` : ''}What was opened and not sealed again stays on Today until
          it is. The forecast goes on as for sealed seed: seal it within the day, or repack it.
        </>
      }
    >
      <Form action={careFor} className="sheet grid max-w-2xl gap-5">
        <HiddenField name="packetId" value={packet.id} />
        <SelectField
          name="what"
          label="What was done"
          options={DONE}
          defaultValue={care.sealedSince && !care.openSince ? 'opened' : 'sealed'}
        />
        <DateField name="on" label="On" max={day} defaultValue={day} />
        <TextField name="note" label="Note" optional />
        <Cautions keys={cautionsOf(packet)} />
        <div>
          <SubmitButton>Write it down</SubmitButton>
        </div>
      </Form>
    </PacketFormPage>
  );
}
