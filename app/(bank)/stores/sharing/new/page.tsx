import type { Metadata } from 'next';
import Link from 'next/link';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { today } from '@/lib/server/today';
import { RequestFields } from '../_parts/request-fields';
import { openRequest } from '../actions';

export const metadata: Metadata = { title: 'New request' };

export default async function NewRequestPage() {
  await requirePerson('volunteer');
  return (
    <>
      <PageHead
        above={<Link href="/stores/sharing">Sharing</Link>}
        title="New request"
        below="Somebody asks for seed. What goes to them is chosen next; nothing leaves the ledger until it is sent."
      />
      <Form action={openRequest} className="sheet grid max-w-2xl gap-5">
        <RequestFields today={today()} />
        <div>
          <SubmitButton>Next: choose lots</SubmitButton>
        </div>
      </Form>
    </>
  );
}
