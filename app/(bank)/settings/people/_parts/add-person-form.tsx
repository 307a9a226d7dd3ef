import { TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { addPerson } from '../actions';
import { IssuedCodeNotice } from './issued-code';
import { RoleField } from './role-field';

export function AddPersonForm() {
  return (
    <section className="sheet max-w-3xl">
      <h2>Add a person</h2>
      <Form action={addPerson} className="mt-4 grid gap-5 sm:grid-cols-2">
        <TextField name="name" label="Name" hint="As it stands beside what they record." />
        <TextField name="signInName" label="Sign-in name" hint="3 to 30 of a-z, 0-9, dot and hyphen." />
        <RoleField chosen="volunteer" className="sm:col-span-2" />
        <div className="grid gap-4 sm:col-span-2">
          <div>
            <SubmitButton>Add and make a code</SubmitButton>
          </div>
          <IssuedCodeNotice />
        </div>
      </Form>
    </section>
  );
}
