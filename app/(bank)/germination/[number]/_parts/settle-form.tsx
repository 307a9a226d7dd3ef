'use client';

import { HiddenField } from '@/app/_components/form/fields';
import { Form, useFormState } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { settle } from '../actions';
import { ClassBoxes } from './class-boxes';

export interface Disagreement {
  trayId: string;
  dishId: string;
  position: number;
  on: string;
  /** '23 Nov 2026' */
  onInWords: string;
  version: string;
  counts: { id: string; byName: string; inWords: string; sentInWords: string }[];
  /** all of them one after the other */
  together: string;
}

/** Counts of one dish and day that say different things: somebody who knows says which holds. */
export function SettleForm({ disagreement }: { disagreement: Disagreement }) {
  const { trayId, dishId, on, version, position, onInWords, counts, together } = disagreement;
  return (
    <Form action={settle} className="sheet grid gap-4">
      <HiddenField name="trayId" value={trayId} />
      <HiddenField name="dishId" value={dishId} />
      <HiddenField name="on" value={on} />
      <HiddenField name="version" value={version} />
      <fieldset className="grid gap-1">
        <legend className="font-semibold">
          Dish {position}, {onInWords}: which count holds?
        </legend>
        {counts.map(({ id, byName, inWords, sentInWords }) => (
          <Choice key={id} value={`one ${id}`}>
            {byName}: <b>{inWords}</b> <span className="label">{sentInWords}</span>
          </Choice>
        ))}
        <Choice value="both">
          All, one after the other: <b>{together}</b>
        </Choice>
        <Choice value="other">Neither: it was</Choice>
        <ClassBoxes prefix="other" found={null} />
        <Message />
      </fieldset>
      <div>
        <SubmitButton>This one holds</SubmitButton>
      </div>
    </Form>
  );
}

function Choice({ value, children }: { value: string; children: React.ReactNode }) {
  const { state } = useFormState();
  return (
    <label className="flex min-h-11 items-center gap-3">
      <input
        key={state.attempt}
        type="radio"
        name="settle"
        value={value}
        defaultChecked={state.values.settle === value}
        aria-invalid={state.fieldErrors.settle ? true : undefined}
        className="size-6 shrink-0 accent-leaf"
      />
      <span>{children}</span>
    </label>
  );
}

function Message() {
  const message = useFormState().state.fieldErrors.settle;
  return message ? <p className="text-sm font-semibold text-madder">{message}</p> : null;
}
