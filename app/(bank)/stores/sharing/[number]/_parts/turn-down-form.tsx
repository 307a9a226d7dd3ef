import { HiddenField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { turnDown } from '../../actions';

/** Says no to a request, with the reason; folded away, since it is seldom what one came for. */
export function TurnDownForm({ id, version }: { id: string; version: number }) {
  return (
    <details className="no-print">
      <summary className="min-h-11 cursor-pointer py-2 font-semibold">Turn it down</summary>
      <Form action={turnDown} className="sheet mt-2 grid max-w-2xl gap-5">
        <HiddenField name="requestId" value={id} />
        <HiddenField name="version" value={version} />
        <TextField name="reason" label="Why" hint="Kept with the request." />
        <div>
          <SubmitButton quiet>Turn down this request</SubmitButton>
        </div>
      </Form>
    </details>
  );
}
