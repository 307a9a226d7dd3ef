import { HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { takeOverLearnt } from '../../actions';

interface Props {
  cropId: string;
  version: number;
  /** as this page shows them: the command refuses others */
  figures: string;
  /** earlier ones are in use */
  again: boolean;
}

/** Makes the learnt figures the bank's own for this crop. Emptying those undoes it. */
export function TakeOverButton({ cropId, version, figures, again }: Props) {
  return (
    <Form action={takeOverLearnt} className="no-print grid justify-items-start gap-2">
      <HiddenField name="id" value={cropId} />
      <VersionField version={version} />
      <HiddenField name="shown" value={figures} />
      <SubmitButton quiet busy="Judging its lots …">
        {again ? 'Use the new figures for this crop' : 'Use these for this crop'}
      </SubmitButton>
      <p className="label max-w-prose">
        All its lots are judged by them from then on. They become the bank's own figures; emptying those undoes it.
      </p>
    </Form>
  );
}
