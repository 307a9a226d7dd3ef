import Link from 'next/link';
import { CheckField, HiddenField, NumberField, SelectField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { Notice } from '@/app/_components/notice';
import { formatCount, formatGrams } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { gramsToWeighOut } from '@/lib/domain/stock/grams-to-weigh-out';
import { packetRoleLabel } from '@/lib/domain/stock/packet-roles';
import type { RequestLine } from '@/lib/server/queries/request-lines';
import type { RequestPage } from '@/lib/server/queries/sharing-requests';
import { changeLines } from '../../actions';

/** The list of an open request, to be changed: from which packet, how many seeds, and what stands against it. */
export function LinesForm({ request }: { request: RequestPage }) {
  return (
    <Form action={changeLines} className="grid gap-4">
      <HiddenField name="requestId" value={request.id} />
      <VersionField version={request.version} />
      <ol className="grid gap-4">
        {request.lines.map((line, index) => (
          <li key={line.id} className="sheet grid gap-4">
            <Line line={line} index={index} />
          </li>
        ))}
      </ol>
      <div>
        <SubmitButton quiet>Save the list</SubmitButton>
      </div>
    </Form>
  );
}

function Line({ line, index }: { line: RequestLine; index: number }) {
  const grams = line.seeds === null ? null : gramsToWeighOut(line.seeds, line.lot?.thousandSeedWeightG ?? null);
  return (
    <>
      <LineHead line={line} />
      <HiddenField name={`lines.${index}.id`} value={line.id} />
      <div className="grid items-start gap-4 sm:grid-cols-[1fr_8rem_1fr]">
        <SelectField
          name={`lines.${index}.packetId`}
          label="From packet"
          options={line.packets.map((packet) => ({
            value: packet.id,
            label: `${packet.number}: ${formatCount(packet.seeds)} seeds${packet.storeName ? `, ${packet.storeName}` : ''}${packet.role === 'active' ? '' : ` (${packetRoleLabel(packet.role)})`}`,
          }))}
          defaultValue={line.packet?.id}
        />
        <NumberField
          name={`lines.${index}.seeds`}
          label="Seeds"
          whole
          defaultValue={line.seeds}
          unit={grams === null ? undefined : formatGrams(grams)}
        />
        <TextField name={`lines.${index}.note`} label="Note" optional defaultValue={line.note} />
      </div>
      {line.hindrance && (
        <Notice kind="caution">
          {line.hindrance.sentence}
          {line.hindrance.mayBeOverruled && ' A steward may send it all the same, with a reason.'}
        </Notice>
      )}
      <CheckField name={`lines.${index}.remove`} label="Take off the list" />
    </>
  );
}

/** Which seed a line is about. */
export function LineHead({ line }: { line: RequestLine }) {
  return (
    <h3 className="wrap-anywhere">
      {line.accession.name} <span className="quiet font-normal">{line.accession.cropName}</span>
      {line.lot && (
        <>
          {' '}
          <Link href={lotPath(line.lot.number)} className="figures font-normal whitespace-nowrap text-ink underline">
            {line.lot.number}
          </Link>
        </>
      )}
    </h3>
  );
}
