'use client';

import { useId } from 'react';
import {
  HiddenField,
  NumberField,
  type Option,
  SelectField,
  TextAreaField,
  TextField,
} from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { DRYING_WITH } from '@/lib/schemas/drying-run';
import { startRun } from '../actions';

interface Props {
  lotNumber: string;
  packets: Option[];
  /** the packet that the address asks for */
  packetId: string | null;
  tests: Option[];
  stores: Option[];
  target: number | null;
  targetHint: string;
}

/** Lays a lot out to dry: moisture and weight now, and what to dry it to. */
export function StartForm({ lotNumber, packets, packetId, tests, stores, target, targetHint }: Props) {
  const waysId = useId();
  return (
    <Form action={startRun} className="sheet grid gap-6">
      <HiddenField name="lot" value={lotNumber} />
      {packets.length > 0 && (
        <SelectField
          name="packetId"
          label="Which seed"
          options={packets}
          empty="all of the lot, or seed not packed yet"
          defaultValue={packetId ?? (packets.length === 1 ? packets[0]?.value : '')}
        />
      )}
      <fieldset className="grid gap-3">
        <legend className="mb-1 font-semibold">Moisture now</legend>
        {tests.length > 0 && (
          <SelectField
            name="moistureTestId"
            label="From a test"
            options={tests}
            empty="none: typed below"
            defaultValue={tests[0]?.value}
          />
        )}
        <NumberField
          name="startMoisturePercent"
          label={tests.length > 0 ? 'Or typed' : 'Percent of fresh weight'}
          hint="The whole run rests on it: a point too low here is a point too low at the end."
          unit="%"
          optional={tests.length > 0}
          className="max-w-80"
        />
      </fieldset>
      <NumberField
        name="targetMoisturePercent"
        label="Dry it to"
        hint={targetHint}
        unit="%"
        defaultValue={target}
        className="max-w-prose"
      />
      <div className="grid gap-5 sm:grid-cols-2">
        <NumberField
          name="tareG"
          label="Empty tray"
          hint="Bag, tray or jar. 0 on a balance that was tared."
          unit="g"
          defaultValue={0}
        />
        <NumberField name="weightG" label="Tray with seed, now" hint="As the balance shows it." unit="g" />
        <TextField name="dryingWith" label="Dried with" optional list={waysId} />
        <datalist id={waysId}>
          {DRYING_WITH.map((way) => (
            <option key={way} value={way} />
          ))}
        </datalist>
        <SelectField name="storeId" label="Where" options={stores} empty="not in a store" optional />
        <TextField name="at" label="Weighed at" hint="Left empty: now." type="datetime-local" optional />
      </div>
      <TextAreaField name="notes" label="Notes" optional rows={2} />
      <div>
        <SubmitButton>Start drying</SubmitButton>
      </div>
    </Form>
  );
}
