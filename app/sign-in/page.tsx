import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { DoorPage } from '@/app/_components/door-page';
import { HiddenField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { Notice } from '@/app/_components/notice';
import { wayBack } from '@/lib/schemas/way-back';
import { currentPerson } from '@/lib/server/auth/current-person';
import { hasAccounts } from '@/lib/server/queries/people';
import { signIn } from './actions';

export const metadata: Metadata = { title: 'Sign in' };

/** Open to anybody; whoever is in already goes on to the bank. */
export default async function SignInPage({
  searchParams,
}: {
  searchParams: Promise<{ password?: string; then?: string }>;
}) {
  const { password, then } = await searchParams;
  if (await currentPerson()) redirect(wayBack.parse(then));
  if (!(await hasAccounts())) redirect('/welcome');
  return (
    <DoorPage title="Sign in">
      {password === 'set' && <Notice kind="done">Your new password is set. Sign in with it.</Notice>}
      <Form action={signIn}>
        <HiddenField name="then" value={wayBack.parse(then)} />
        <TextField name="signInName" label="Sign-in name" autoComplete="username" />
        <TextField name="password" label="Password" type="password" autoComplete="current-password" />
        <SubmitButton busy="Signing in …">Sign in</SubmitButton>
      </Form>
      <p className="text-sm">
        A steward gave you a code, or you lost your password?{' '}
        <Link href="/new-password" className="text-leaf underline underline-offset-3">
          Set a password with a code
        </Link>
      </p>
    </DoorPage>
  );
}
