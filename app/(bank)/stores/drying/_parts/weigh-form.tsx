'use client';

import { CheckField, HiddenField, NumberField, TextField } from '@/app/_components/form/fields';
import { Form, useFormState } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { correctWeighing, weighRun } from '../actions';

/** One big field for wet hands: what the balance shows. The time is now unless it is written. */
export function WeighForm({ runId, tareG }: { runId: string; tareG: number }) {
  return (
    <Form action={weighRun} className="grid gap-4">
      <HiddenField name="runId" value={runId} />
      <div className="[&_input]:min-h-16 [&_input]:text-3xl!">
        <NumberField
          name="weightG"
          label="The balance shows"
          hint={tareG > 0 ? `With the tray (${tareG} g empty).` : 'Seed alone, or on a tared tray.'}
          unit="g"
        />
      </div>
      <WeightAnyway />
      <div className="[&_button]:min-h-14 [&_button]:w-full sm:[&_button]:w-auto">
        <SubmitButton>Save the weight</SubmitButton>
      </div>
      <details>
        <summary className="min-h-11 cursor-pointer py-2">Weighed earlier?</summary>
        <TextField
          name="at"
          label="Weighed at"
          hint="Left empty: now."
          type="datetime-local"
          optional
          className="max-w-72"
        />
      </details>
    </Form>
  );
}

/** The same for a weighing that was written down wrong. */
export function CorrectWeighingForm({ weighingId, weightG, at }: { weighingId: string; weightG: number; at: string }) {
  return (
    <Form action={correctWeighing} className="sheet grid max-w-xl gap-5">
      <HiddenField name="weighingId" value={weighingId} />
      <NumberField name="weightG" label="The balance showed" hint="With the tray." unit="g" defaultValue={weightG} />
      <WeightAnyway />
      <TextField name="at" label="Weighed at" type="datetime-local" defaultValue={at} />
      <div>
        <SubmitButton>Save the correction</SubmitButton>
      </div>
    </Form>
  );
}

/** Appears when the weight does not fit the others: whoever ticks it has read why. */
function WeightAnyway() {
  const { state } = useFormState();
  const asked = state.fieldErrors.weightAnyway !== undefined || state.values.weightAnyway === 'on';
  return asked ? <CheckField name="weightAnyway" label="The weight is right" /> : null;
}
