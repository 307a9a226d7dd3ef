'use client';

import { useId } from 'react';
import { useFormState } from '@/app/_components/form/form';

/** The counts as a table to paste, and below it every problem by line and column, or what was found. */
export function TableField({ defaultValue = '' }: { defaultValue?: string }) {
  const { state } = useFormState();
  const id = useId();
  const problems = (state.fieldErrors.table ?? '').split('\n').filter(Boolean);
  const found = (state.values.checked ?? '').split('\n').filter(Boolean);
  return (
    <div className="grid gap-1">
      <label htmlFor={id} className="font-semibold">
        Counts
      </label>
      <p id={`${id}-hint`} className="label max-w-prose">
        One row a count, with the headings Lot, Moisture, Temperature, Days, Sown, Germinated. Moisture in percent of
        fresh weight, temperature in °C, days since the seed was put away. Before storage (day 0) moisture and
        temperature may stay blank. Decimal commas, semicolons and tabs are fine.
      </p>
      <textarea
        key={`table-${state.attempt}`}
        id={id}
        name="table"
        rows={14}
        spellCheck={false}
        defaultValue={state.values.table ?? defaultValue}
        aria-invalid={problems.length > 0 ? true : undefined}
        aria-describedby={`${id}-hint ${id}-error`}
        className="field figures whitespace-pre"
      />
      <ul id={`${id}-error`} className="grid gap-1 text-sm font-semibold text-madder empty:hidden">
        {problems.map((problem) => (
          <li key={problem}>{problem}</li>
        ))}
      </ul>
      <div role="status" className="grid gap-1 text-sm">
        {problems.length === 0 && found.map((line) => <p key={line}>{line}</p>)}
      </div>
    </div>
  );
}
