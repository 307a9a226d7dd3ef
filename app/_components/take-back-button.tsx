import { takeBack } from '@/app/(bank)/collection/lots/actions';
import { HiddenField } from './form/fields';
import { Form } from './form/form';
import { SubmitButton } from './form/submit-button';

interface Props {
  movementId: string;
  /** which line, for who cannot see it: 'the sowing of 3 Nov 2026' */
  called: string;
  /** where to go on: an address of this bank; the lot's page when left out */
  back?: string;
}

/** Undoes one line of the ledger by a counter-entry; both lines stay to be read. */
export function TakeBackButton({ movementId, called, back }: Props) {
  return (
    <Form action={takeBack} className="no-print grid justify-items-end gap-2 max-md:justify-items-start">
      <HiddenField name="movementId" value={movementId} />
      {back && <HiddenField name="back" value={back} />}
      <SubmitButton quiet busy="Taking back …">
        Take back<span className="sr-only"> {called}</span>
      </SubmitButton>
    </Form>
  );
}
