import type { Metadata } from 'next';
import { Cautions } from '@/app/_components/cautions';
import { CheckField, DateField, HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { ContainerField, MoistureField } from '@/app/_components/form/placing-fields';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { repackQuery } from '@/lib/schemas/repack-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { today } from '@/lib/server/today';
import { DesiccantFields } from '../../_parts/desiccant-fields';
import { cautionsOf, PacketFormPage } from '../../_parts/packet-form-page';
import { type PacketProps, packetOfAddress } from '../../_parts/packet-of-address';
import { repack } from '../../actions';

export const metadata: Metadata = { title: 'Repack a packet' };

interface Props extends PacketProps {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function RepackPacketPage(props: Props) {
  await requirePerson('volunteer');
  const packet = await packetOfAddress(props);
  const day = today();
  const offered = repackQuery.parse(await props.searchParams);
  return (
    <PacketFormPage
      packet={packet}
      title="Repack"
      about="All of its seed goes into another container, or was dried and goes back into its own. It stays where it lies; the old stay ends on that day."
    >
      <Form action={repack} className="sheet grid max-w-3xl gap-5 sm:grid-cols-2">
        <HiddenField name="packetId" value={packet.id} />
        {packet.place && <VersionField version={packet.place.placementId} />}
        <ContainerField defaultValue={packet.container} />
        <MoistureField defaultValue={offered.moisture ?? packet.moisturePercent} />
        <DateField name="from" label="On" max={day} defaultValue={offered.from ?? day} />
        <CheckField name="sealed" label="Sealed" hint="Untick it while it still stands open." checkedByDefault />
        <DesiccantFields none="none" />
        <div className="sm:col-span-2">
          <Cautions keys={['freezing-moist-seed', ...cautionsOf(packet)]} />
        </div>
        <div>
          <SubmitButton>Repack it</SubmitButton>
        </div>
      </Form>
    </PacketFormPage>
  );
}
