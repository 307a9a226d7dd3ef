import type { Metadata } from 'next';
import Link from 'next/link';
import { Cautions } from '@/app/_components/cautions';
import { DateField, HiddenField, NumberField, SelectField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { EmptyState } from '@/app/_components/list/empty-state';
import { packetPath } from '@/app/_format/store-path';
import { requirePerson } from '@/lib/server/auth/require-person';
import { today } from '@/lib/server/today';
import { cautionsOf, PacketFormPage } from '../../_parts/packet-form-page';
import { type PacketProps, packetOfAddress } from '../../_parts/packet-of-address';
import { takeSeed } from '../../actions';

export const metadata: Metadata = { title: 'Take seed out' };

const REASONS = [
  { value: 'test', label: 'a test' },
  { value: 'sowing', label: 'sowing' },
  { value: 'sharing', label: 'sharing it with others' },
  { value: 'discard', label: 'discarding it' },
  { value: 'loss', label: 'it was lost or eaten' },
];
const UNITS = [
  { value: 'seeds', label: 'seeds' },
  { value: 'grams', label: 'grams' },
];

export default async function TakeSeedPage(props: PacketProps) {
  await requirePerson('volunteer');
  const packet = await packetOfAddress(props);
  const day = today();
  return (
    <PacketFormPage
      packet={packet}
      title="Take seed out of"
      about={
        packet.role === 'safety-duplicate' &&
        'This is a safety duplicate, kept in case all else is lost. Take seed from active stock if there is any.'
      }
    >
      {packet.seeds === 0 ? (
        <EmptyState>
          <p>
            No seed is left in it. <Link href={packetPath(packet.number)}>Back to the packet</Link>
          </p>
        </EmptyState>
      ) : (
        <Form action={takeSeed} className="sheet grid max-w-2xl gap-5">
          <HiddenField name="packetId" value={packet.id} />
          <div className="grid grid-cols-[1fr_9rem] items-end gap-3">
            <NumberField name="amount" label="How much" />
            <SelectField name="unit" label="In" options={UNITS} />
          </div>
          <SelectField name="reason" label="For" empty="Choose …" options={REASONS} />
          <DateField name="on" label="On" max={day} defaultValue={day} />
          <TextField name="note" label="Note" hint="To whom, or what became of it." optional />
          <p className="label">
            Seed for a germination test is taken out once: here, or with the record of the test, which asks.
          </p>
          <Cautions keys={cautionsOf(packet)} />
          <div>
            <SubmitButton>Take it out</SubmitButton>
          </div>
        </Form>
      )}
    </PacketFormPage>
  );
}
