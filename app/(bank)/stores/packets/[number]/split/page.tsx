import type { Metadata } from 'next';
import Link from 'next/link';
import { Cautions } from '@/app/_components/cautions';
import { CheckField, DateField, HiddenField, NumberField, SelectField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { ContainerField, MoistureField, StoreField } from '@/app/_components/form/placing-fields';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { EmptyState } from '@/app/_components/list/empty-state';
import { packetPath } from '@/app/_format/store-path';
import { isHermetic } from '@/lib/domain/stock/containers';
import { PACKET_ROLES } from '@/lib/domain/stock/packet-roles';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { today } from '@/lib/server/today';
import { DesiccantFields } from '../../_parts/desiccant-fields';
import { cautionsOf, PacketFormPage } from '../../_parts/packet-form-page';
import { type PacketProps, packetOfAddress } from '../../_parts/packet-of-address';
import { splitOff } from '../../actions';

export const metadata: Metadata = { title: 'Split a packet' };

const UNITS = [
  { value: 'seeds', label: 'seeds' },
  { value: 'grams', label: 'grams' },
];

export default async function SplitPacketPage(props: PacketProps) {
  await requirePerson('volunteer');
  const [packet, stores] = await Promise.all([packetOfAddress(props), findStoreChoices()]);
  const { place, container } = packet;
  const day = today();
  return (
    <PacketFormPage
      packet={packet}
      title="Split"
      about="Part of it goes into a packet of its own, with a number of its own. The new packet takes the storage history of its seed with it."
    >
      {packet.seeds === 0 ? (
        <EmptyState>
          <p>
            No seed is left in it. <Link href={packetPath(packet.number)}>Back to the packet</Link>
          </p>
        </EmptyState>
      ) : (
        <Form action={splitOff} className="sheet grid max-w-3xl gap-6">
          <HiddenField name="packetId" value={packet.id} />
          {place && <VersionField version={place.placementId} />}
          <fieldset className="grid gap-5 sm:grid-cols-2">
            <legend className="mb-3 text-lg font-semibold">How much, and what for</legend>
            <div className="grid grid-cols-[1fr_9rem] items-end gap-3">
              <NumberField name="amount" label="For the new packet" />
              <SelectField name="unit" label="In" options={UNITS} />
            </div>
            <SelectField
              name="role"
              label="What the new packet is for"
              hint="At a partner bank: a safety duplicate."
              defaultValue="safety-duplicate"
              options={PACKET_ROLES.map(({ key, label }) => ({ value: key, label }))}
            />
          </fieldset>
          <fieldset className="grid gap-5 border-t border-rule pt-4 sm:grid-cols-2">
            <legend className="pr-3 text-lg font-semibold">Where, and in what</legend>
            <StoreField stores={stores} />
            <DateField name="from" label="From" max={day} defaultValue={day} />
            <ContainerField defaultValue={container} />
            <MoistureField defaultValue={packet.moisturePercent} />
            <CheckField
              name="sealed"
              label="Sealed"
              hint="Untick it while it still stands open."
              checkedByDefault={container !== null && isHermetic(container)}
              className="sm:col-span-2"
            />
            <DesiccantFields none="none" />
          </fieldset>
          <Cautions keys={['freezing-moist-seed', 'warm-before-opening', ...cautionsOf(packet)]} />
          <div>
            <SubmitButton>Split it off</SubmitButton>
          </div>
        </Form>
      )}
    </PacketFormPage>
  );
}
