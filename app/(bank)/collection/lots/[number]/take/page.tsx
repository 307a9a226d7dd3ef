import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Cautions } from '@/app/_components/cautions';
import { DateField, NumberField, SelectField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getLotPacketsByNumber } from '@/lib/server/queries/packets';
import { today } from '@/lib/server/today';
import { choosePacket, PacketField } from '../../_parts/packet-field';
import { takeSeed } from '../../actions';

export const metadata: Metadata = { title: 'Take seed out' };

const REASONS = [
  { value: 'sowing', label: 'sowing' },
  { value: 'sharing', label: 'sharing it with others' },
  { value: 'discard', label: 'discarding it' },
  { value: 'loss', label: 'it was lost or eaten' },
];
const UNITS = [
  { value: 'seeds', label: 'seeds' },
  { value: 'grams', label: 'grams' },
];
/** degrees C: colder than a cool room, water condenses on seed that is opened at once */
const COLD_C = 10;

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<{ packet?: string | string[] }>;
}

export default async function TakeSeedPage({ params, searchParams }: Props) {
  await requirePerson('volunteer');
  const [{ packet: asked }, lot] = await Promise.all([
    searchParams,
    params.then(({ number }) => getLotPacketsByNumber(readParameter(number))),
  ]);
  if (!lot) notFound();
  const packet = choosePacket(lot.packets, asked);
  const cold = lot.packets.some((one) => one.placement && one.placement.targetTemperatureC < COLD_C);
  return (
    <>
      <PageHead
        above={
          <Link href={lotPath(lot.number)}>
            {lot.accession.name} {lot.number}
          </Link>
        }
        title="Take seed out"
        below={
          packet && (
            <>
              Packet <span className="figures">{packet.number}</span> holds about {formatCount(packet.seeds)} seeds
              {packet.placement && `, in ${packet.placement.storeName}`}.
            </>
          )
        }
      />
      {packet === null || packet.seeds === 0 ? (
        <EmptyState>
          <p>
            No seed of this lot is left. <Link href={lotPath(lot.number)}>Back to the lot</Link>
          </p>
        </EmptyState>
      ) : (
        <Form action={takeSeed} className="sheet grid max-w-2xl gap-5">
          <PacketField packets={lot.packets} chosen={packet} />
          <div className="grid grid-cols-[1fr_9rem] items-end gap-3">
            <NumberField name="amount" label="How much" />
            <SelectField name="unit" label="In" options={UNITS} />
          </div>
          <SelectField name="reason" label="For" empty="Choose …" options={REASONS} />
          <DateField name="on" label="On" max={today()} defaultValue={today()} />
          <TextField name="note" label="Note" hint="To whom, or what became of it." optional />
          <p className="label">Seed for a germination test goes out with the record of the test.</p>
          <Cautions keys={[...(cold ? ['warm-before-opening'] : []), ...(lot.treatment ? ['treated-seed'] : [])]} />
          <div>
            <SubmitButton>Take it out</SubmitButton>
          </div>
        </Form>
      )}
    </>
  );
}
