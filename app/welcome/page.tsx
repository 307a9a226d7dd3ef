import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { DoorPage } from '@/app/_components/door-page';
import { TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { NewPasswordField } from '@/app/_components/new-password-field';
import { isLoopbackOnly } from '@/lib/server/env';
import { hasAccounts } from '@/lib/server/queries/people';
import { openBank } from './actions';

export const metadata: Metadata = { title: 'Welcome' };

/** There once: while other computers can reach this bank and nobody has an account. */
export default async function WelcomePage() {
  if (isLoopbackOnly() || (await hasAccounts())) notFound();
  return (
    <DoorPage
      title="Welcome"
      say="This bank can be reached from other devices, so it needs a steward who signs in. That is you, if you started it."
    >
      <Form action={openBank}>
        <TextField
          name="setupCode"
          label="Setup code"
          hint="Printed in the terminal where Hilum was started, so that nobody else can be first."
        />
        <TextField name="name" label="Your name" hint="As it stands beside what you record." autoComplete="name" />
        <TextField
          name="signInName"
          label="Sign-in name"
          hint="Short, without spaces: 3 to 30 of a-z, 0-9, dot and hyphen."
          autoComplete="username"
        />
        <NewPasswordField />
        <SubmitButton>Open the bank</SubmitButton>
      </Form>
    </DoorPage>
  );
}
