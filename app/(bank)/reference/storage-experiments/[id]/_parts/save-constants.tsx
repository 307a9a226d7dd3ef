import { HiddenField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import type { TemperatureCoefficients } from '@/lib/domain/longevity/storage-experiment/experiment-fit';
import { saveConstants } from '../../actions';

interface Props {
  experiment: { id: string; version: number };
  coefficients: TemperatureCoefficients;
  suggestion: string;
}

/** Keeps the constants as shown, under a name of their own. */
export function SaveConstants({ experiment, coefficients, suggestion }: Props) {
  return (
    <Form action={saveConstants} className="sheet no-print grid max-w-3xl gap-4">
      <h2>Save as the bank’s own constants</h2>
      <p>
        They are kept with their standard errors, the conditions covered, this experiment and today’s date as their
        source. No forecast changes until they are chosen on a crop’s page.
      </p>
      <HiddenField name="experimentId" value={experiment.id} />
      <VersionField version={experiment.version} />
      <HiddenField name="coefficients" value={coefficients} />
      <TextField name="name" label="Name" hint="How this set is told from others." defaultValue={suggestion} />
      <div>
        <SubmitButton>Save as the bank’s own</SubmitButton>
      </div>
    </Form>
  );
}
