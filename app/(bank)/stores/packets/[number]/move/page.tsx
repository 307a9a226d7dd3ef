import type { Metadata } from 'next';
import { Cautions } from '@/app/_components/cautions';
import { AnywayField } from '@/app/_components/form/anyway-field';
import { FieldMessage } from '@/app/_components/form/field-message';
import { DateField, HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { ContainerField, StoreField } from '@/app/_components/form/placing-fields';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { formatDate } from '@/app/_format/figures';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { today } from '@/lib/server/today';
import { PacketFormPage } from '../../_parts/packet-form-page';
import { type PacketProps, packetOfAddress } from '../../_parts/packet-of-address';
import { putElsewhere } from '../../actions';

export const metadata: Metadata = { title: 'Move a packet' };

export default async function MovePacketPage(props: PacketProps) {
  await requirePerson('volunteer');
  const [packet, stores] = await Promise.all([packetOfAddress(props), findStoreChoices()]);
  const { place, since } = packet;
  const day = today();
  return (
    <PacketFormPage
      packet={packet}
      title="Move"
      about={
        since &&
        `It has lain there since ${formatDate(since)}. That stays in its history and counts in the forecast. To change the container, repack it.`
      }
    >
      <Form action={putElsewhere} className="sheet grid max-w-2xl gap-5">
        <HiddenField name="packetId" value={packet.id} />
        {place && <VersionField version={place.placementId} />}
        <StoreField stores={stores} defaultValue={place?.storeId} />
        {!place && <ContainerField />}
        <FieldMessage name="moisturePercent" />
        <AnywayField name="storeAnyway" label="Put it there anyway" />
        <DateField name="from" label="From" max={day} defaultValue={day} />
        <p className="label">At a partner bank it becomes a safety duplicate, whatever it was kept for before.</p>
        <Cautions keys={['freezing-moist-seed', 'warm-before-opening']} />
        <div>
          <SubmitButton>Move it</SubmitButton>
        </div>
      </Form>
    </PacketFormPage>
  );
}
