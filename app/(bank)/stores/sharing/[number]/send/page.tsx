import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound, redirect } from 'next/navigation';
import { Cautions } from '@/app/_components/cautions';
import { DateField, HiddenField, SelectField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import { readParameter } from '@/app/_format/read-parameter';
import { requestPath } from '@/app/_format/request-path';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getRequest } from '@/lib/server/queries/sharing-requests';
import { today } from '@/lib/server/today';
import { sendSeed } from '../../actions';
import { LineToSend } from '../_parts/line-to-send';

export const metadata: Metadata = { title: 'Send seed' };

const MEASURED = [
  { value: 'counted', label: 'counted seed by seed' },
  { value: 'weighed', label: 'weighed out, where the list gives grams' },
];
/** degrees C: colder than a cool room, water condenses on seed that is opened at once */
const COLD_C = 10;

interface Props {
  params: Promise<{ number: string }>;
}

export default async function SendRequestPage({ params }: Props) {
  await requirePerson('steward');
  const request = await getRequest(readParameter((await params).number));
  if (!request) notFound();
  const path = requestPath(request.number);
  if (request.status !== 'open') redirect(path);
  const cold = request.lines.some(
    ({ packet }) => packet?.targetTemperatureC != null && packet.targetTemperatureC < COLD_C,
  );
  const treated = request.lines.some(({ lot }) => lot?.treatment);
  return (
    <>
      <PageHead
        above={
          <Link href={path}>
            {request.recipient} {request.number}
          </Link>
        }
        title="Send the seed"
        below="All of it leaves the ledger in one step, or none of it."
      />
      {request.lines.length === 0 ? (
        <EmptyState>
          <p>
            Nothing is on the list yet. <Link href={`${path}/choose`}>Choose lots</Link>
          </p>
        </EmptyState>
      ) : (
        <Form action={sendSeed} className="grid gap-4">
          <HiddenField name="requestId" value={request.id} />
          <HiddenField name="version" value={request.version} />
          <ol className="grid gap-4">
            {request.lines.map((line) => (
              <li key={line.id} className="sheet grid gap-3">
                <LineToSend line={line} listPath={path} />
              </li>
            ))}
          </ol>
          <div className="sheet grid gap-5 sm:grid-cols-2">
            <SelectField name="measured" label="The seeds were" empty="Choose …" options={MEASURED} />
            <DateField name="on" label="On" max={today()} defaultValue={today()} />
          </div>
          <Cautions
            keys={[
              ...(cold ? ['warm-before-opening'] : []),
              ...(treated ? ['treated-seed'] : []),
              'seed-borne-disease',
              'local-law',
            ]}
          />
          <div>
            <SubmitButton busy="Sending …">Send it to {request.recipient}</SubmitButton>
          </div>
        </Form>
      )}
    </>
  );
}
