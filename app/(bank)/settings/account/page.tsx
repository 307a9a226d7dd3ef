import type { Metadata } from 'next';
import Link from 'next/link';
import { HiddenField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { NewPasswordField } from '@/app/_components/new-password-field';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { signOut } from '@/app/sign-in/actions';
import { ROLE_MEANS } from '@/lib/domain/people/roles';
import { currentSession } from '@/lib/server/auth/current-person';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findSessions } from '@/lib/server/queries/people';
import { SessionList } from './_parts/session-list';
import { changePassword, endSession } from './actions';

export const metadata: Metadata = { title: 'Your account' };

const DONE: Record<string, string> = {
  password: 'Your new password is set. Every other device was signed out.',
  session: 'That device is signed out.',
};

export default async function AccountPage({ searchParams }: { searchParams: Promise<{ done?: string }> }) {
  const person = await requirePerson('visitor');
  const [{ done }, session] = await Promise.all([searchParams, currentSession()]);
  const head = (
    <PageHead
      above={<Link href="/settings">Settings</Link>}
      title="Your account"
      below={`${person.name}, ${person.role}: ${ROLE_MEANS[person.role]}`}
    />
  );
  if (!session) {
    return (
      <>
        {head}
        <Notice kind="note">Only this computer can reach the bank as it runs now, so nobody signs in.</Notice>
      </>
    );
  }
  const sessions = await findSessions(person.id);
  return (
    <>
      {head}
      {done && DONE[done] && <Notice kind="done">{DONE[done]}</Notice>}
      <div className="grid max-w-3xl gap-4">
        <section className="sheet grid gap-3">
          <h2>Signed in</h2>
          <SessionList sessions={sessions} hereId={session.id}>
            {(row) =>
              row.id === session.id ? (
                <form action={signOut}>
                  <button type="submit" className="button">
                    Sign out
                  </button>
                </form>
              ) : (
                <Form action={endSession} className="grid gap-2">
                  <HiddenField name="sessionId" value={row.id} />
                  <SubmitButton quiet>Sign it out</SubmitButton>
                </Form>
              )
            }
          </SessionList>
        </section>
        <section className="sheet">
          <h2>Change your password</h2>
          <Form action={changePassword} className="mt-3 grid gap-5">
            <TextField name="currentPassword" label="Password now" type="password" autoComplete="current-password" />
            <NewPasswordField name="newPassword" label="New password" />
            <div>
              <SubmitButton>Change password</SubmitButton>
            </div>
          </Form>
        </section>
      </div>
    </>
  );
}
