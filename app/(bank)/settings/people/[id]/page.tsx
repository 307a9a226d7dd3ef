import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import type { ReactNode } from 'react';
import type { FormState } from '@/app/_actions/form-state';
import { HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findSessions, getPerson } from '@/lib/server/queries/people';
import { SessionList } from '../../account/_parts/session-list';
import { IssuedCodeNotice } from '../_parts/issued-code';
import { RoleField } from '../_parts/role-field';
import { blockPerson, changeRole, endSessions, makePasswordCode, unblockPerson } from '../actions';

export const metadata: Metadata = { title: 'Person' };

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<{ done?: string }>;
}

export default async function PersonPage({ params, searchParams }: Props) {
  await requirePerson('steward');
  const [{ id }, { done }] = await Promise.all([params, searchParams]);
  const [person, sessions] = await Promise.all([getPerson(id), findSessions(id)]);
  if (!person) notFound();
  return (
    <>
      <PageHead
        above={<Link href="/settings/people">People</Link>}
        title={person.name}
        below={`${person.signInName} · ${person.role}${person.blocked ? ' · blocked' : ''}`}
      />
      {done && <Notice kind="done">Done.</Notice>}
      <div className="grid max-w-3xl gap-4">
        <Doing title="What they may do" personId={id} action={changeRole} button="Change role">
          <RoleField chosen={person.role} />
        </Doing>
        {!person.blocked && (
          <Doing title="Lost password" personId={id} action={makePasswordCode} button="Make a password code">
            <p>
              {person.codeUntil
                ? 'A code that was made before has not been used yet; a new one takes its place.'
                : 'A code lets them set a new password. The old one works until then.'}
            </p>
            <IssuedCodeNotice />
          </Doing>
        )}
        <Doing
          title="Signed in"
          personId={id}
          action={endSessions}
          button={sessions.length > 0 ? 'Sign out everywhere' : null}
        >
          <SessionList sessions={sessions} />
        </Doing>
        {person.blocked ? (
          <Doing title="Blocked" personId={id} action={unblockPerson} button="Open the account again">
            <p>They cannot sign in. What they recorded is kept.</p>
          </Doing>
        ) : (
          <Doing title="Block" personId={id} action={blockPerson} button="Block this account">
            <p>Signs them out everywhere at once and keeps them out. What they recorded is kept.</p>
          </Doing>
        )}
      </div>
    </>
  );
}

interface DoingProps {
  title: string;
  personId: string;
  action: (state: FormState, data: FormData) => Promise<FormState>;
  button: string | null;
  children: ReactNode;
}

function Doing({ title, personId, action, button, children }: DoingProps) {
  return (
    <section className="sheet">
      <h2>{title}</h2>
      <Form action={action} className="mt-3 grid gap-4">
        <HiddenField name="personId" value={personId} />
        {children}
        {button && (
          <div>
            <SubmitButton quiet>{button}</SubmitButton>
          </div>
        )}
      </Form>
    </section>
  );
}
