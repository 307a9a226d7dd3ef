import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { DoorPage } from '@/app/_components/door-page';
import { TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { NewPasswordField } from '@/app/_components/new-password-field';
import { isLoopbackOnly } from '@/lib/server/env';
import { setPassword } from './actions';

export const metadata: Metadata = { title: 'Set a password' };

/** Open to anybody with a steward's code. */
export default async function NewPasswordPage() {
  if (isLoopbackOnly()) redirect('/');
  return (
    <DoorPage title="Set a password" say="With the code that a steward gave you. It works once, within a day.">
      <Form action={setPassword}>
        <TextField name="signInName" label="Sign-in name" autoComplete="username" />
        <TextField name="code" label="Code" hint="Four groups of four. Capitals and hyphens make no difference." />
        <NewPasswordField label="New password" />
        <SubmitButton>Set this password</SubmitButton>
      </Form>
      <p className="text-sm">
        <Link href="/sign-in" className="text-leaf underline underline-offset-3">
          Back to signing in
        </Link>
      </p>
    </DoorPage>
  );
}
