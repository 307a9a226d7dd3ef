'use client';

import { DateField, HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { endRun } from '../actions';

/** The seed is taken off the drier. */
export function EndForm({ runId, today, stop }: { runId: string; today: string; stop: boolean }) {
  return (
    <Form action={endRun} className="flex flex-wrap items-end gap-3">
      <HiddenField name="runId" value={runId} />
      <DateField name="on" label="Taken off on" max={today} defaultValue={today} />
      <SubmitButton quiet={!stop}>End the run</SubmitButton>
    </Form>
  );
}
