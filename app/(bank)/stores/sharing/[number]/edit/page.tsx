import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound, redirect } from 'next/navigation';
import { HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { PageHead } from '@/app/_components/page-head';
import { readParameter } from '@/app/_format/read-parameter';
import { requestPath } from '@/app/_format/request-path';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getRequest } from '@/lib/server/queries/sharing-requests';
import { today } from '@/lib/server/today';
import { RequestFields } from '../../_parts/request-fields';
import { changeRequest } from '../../actions';

export const metadata: Metadata = { title: 'Change a request' };

interface Props {
  params: Promise<{ number: string }>;
}

export default async function EditRequestPage({ params }: Props) {
  await requirePerson('volunteer');
  const request = await getRequest(readParameter((await params).number));
  if (!request) notFound();
  if (request.status !== 'open') redirect(requestPath(request.number));
  return (
    <>
      <PageHead
        above={<Link href={requestPath(request.number)}>{request.recipient}</Link>}
        title={
          <>
            Change request <span className="figures font-normal">{request.number}</span>
          </>
        }
      />
      <Form action={changeRequest} className="sheet grid max-w-2xl gap-5">
        <HiddenField name="id" value={request.id} />
        <VersionField version={request.version} />
        <RequestFields today={today()} request={request} />
        <div>
          <SubmitButton>Save</SubmitButton>
        </div>
      </Form>
    </>
  );
}
