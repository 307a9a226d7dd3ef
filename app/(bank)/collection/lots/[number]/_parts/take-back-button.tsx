import { HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { takeBack } from '../../actions';

/** Undoes one line of the ledger by a counter-entry; both lines stay to be read. */
export function TakeBackButton({ movementId, called }: { movementId: string; called: string }) {
  return (
    <Form action={takeBack} className="no-print grid justify-items-end gap-2 max-md:justify-items-start">
      <HiddenField name="movementId" value={movementId} />
      <SubmitButton quiet busy="Taking back …">
        Take back<span className="sr-only"> {called}</span>
      </SubmitButton>
    </Form>
  );
}
