import type { Metadata } from 'next';
import { Cautions } from '@/app/_components/cautions';
import { DateField, HiddenField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { ScrollBox } from '@/app/_components/scroll-box';
import { TableHead } from '@/app/_components/table-head';
import { desiccantInWords } from '@/app/_format/packet-words';
import { DESICCANTS } from '@/lib/domain/stock/desiccants';
import { requirePerson } from '@/lib/server/auth/require-person';
import { today } from '@/lib/server/today';
import { DesiccantFields } from '../../_parts/desiccant-fields';
import { cautionsOf, PacketFormPage } from '../../_parts/packet-form-page';
import { type PacketProps, packetOfAddress } from '../../_parts/packet-of-address';
import { careFor } from '../../actions';

export const metadata: Metadata = { title: 'Change a desiccant' };

const COLUMNS = ['Desiccant', 'Look again after', 'How it shows that it is spent', 'Dry it again'];

export default async function DesiccantPage(props: PacketProps) {
  await requirePerson('volunteer');
  const packet = await packetOfAddress(props);
  const now = desiccantInWords(packet.care);
  const day = today();
  return (
    <PacketFormPage
      packet={packet}
      title="Change desiccant of"
      about={now ? `In it now: ${now}.` : 'No desiccant is written down for it.'}
    >
      <Form action={careFor} className="sheet grid max-w-3xl gap-5 sm:grid-cols-2">
        <HiddenField name="packetId" value={packet.id} />
        <HiddenField name="what" value="desiccant" />
        <DesiccantFields none="none: it was taken out" />
        <DateField name="on" label="On" max={day} defaultValue={day} />
        <TextField name="note" label="Note" optional className="sm:col-span-2" />
        <div className="sm:col-span-2">
          <Cautions keys={['cobalt-silica-gel', ...cautionsOf(packet)]} />
        </div>
        <div>
          <SubmitButton>Write it down</SubmitButton>
        </div>
      </Form>
      <section className="grid gap-3" aria-labelledby="kinds">
        <h2 id="kinds">How long they last, and how to dry them</h2>
        <p className="max-w-prose">
          The times are common practice for a container that is opened now and then; one that is opened every week needs
          it sooner. How to dry them is from memory: the maker's sheet wins. Ovens burn; let it cool in a closed tin.
        </p>
        <ScrollBox label="Desiccants" className="sheet p-0!">
          <table className="ledger stacked">
            <TableHead columns={COLUMNS} words={COLUMNS} />
            <tbody>
              {DESICCANTS.map((desiccant) => (
                <tr key={desiccant.key}>
                  <th scope="row" className="row-head">
                    {desiccant.label}
                  </th>
                  <td data-label="look again after">{Math.round(desiccant.changeAfterDays / 30.4)} months</td>
                  <td data-label="spent">{desiccant.spent}</td>
                  <td data-label="dry it again">{desiccant.regenerate}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollBox>
      </section>
    </PacketFormPage>
  );
}
