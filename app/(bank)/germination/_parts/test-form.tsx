'use client';

import { useId } from 'react';
import {
  CheckField,
  DateField,
  HiddenField,
  type Option,
  SelectField,
  TextAreaField,
  TextField,
} from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { recordTest } from '../actions';
import type { ReplicateDraft } from './replicate-draft';
import { ReplicateEntry } from './replicate-entry';

export interface TestFormProps {
  lotNumber: string;
  today: string;
  packets: Option[];
  /** seed of this lot that was taken out for a test and is not named by one */
  takenOut?: Option[];
  /** ways of testing that the crop's methods name, offered while typing */
  methodsOffered: string[];
  /** under the date of the last count: when the method counts */
  countHint: string;
  replicates: ReplicateDraft[];
  addressWithoutReplicates: string | null;
  /** what stands in the boxes of a correction */
  correcting?: {
    id: string;
    number: string;
    setOn: string;
    finishedOn: string;
    packetId: string | null;
    method: string | null;
    notes: string | null;
  };
}

/** One form for a finished test and for its correction. */
export function TestForm(props: TestFormProps) {
  const { correcting, packets, takenOut = [] } = props;
  const methodsId = useId();
  return (
    <Form action={recordTest} className="grid gap-6">
      {correcting ? (
        <>
          <HiddenField name="correctsId" value={correcting.id} />
          <TextField
            name="correctionReason"
            label={`What was wrong with ${correcting.number}?`}
            hint="Stays beside the test, so that nobody wonders later."
          />
          <TextField name="lot" label="Lot" defaultValue={props.lotNumber} className="max-w-72" />
        </>
      ) : (
        <HiddenField name="lot" value={props.lotNumber} />
      )}
      <div className="grid gap-5 sm:grid-cols-2">
        <DateField
          name="setOn"
          label="Set on"
          hint="The day the seeds were laid out."
          max={props.today}
          defaultValue={correcting?.setOn}
        />
        <DateField
          name="finishedOn"
          label="Last count on"
          max={props.today}
          defaultValue={correcting?.finishedOn ?? props.today}
          hint={props.countHint}
        />
      </div>
      <ReplicateEntry initial={props.replicates} addressWithoutReplicates={props.addressWithoutReplicates} />
      {takenOut.length > 0 && (
        <SelectField
          name="withdrawalId"
          label="Seed for this test"
          hint="Seed that was taken out before is not taken out of the ledger again."
          options={takenOut}
          empty="is to be taken out now, or never was in the ledger"
          defaultValue={takenOut[0]?.value}
        />
      )}
      {packets.length > 0 && (
        <div className="grid gap-2">
          <SelectField
            name="packetId"
            label="Seed came from"
            options={packets}
            empty="no packet of this bank"
            defaultValue={correcting ? correcting.packetId : packets[0]?.value}
          />
          {correcting ? (
            <p className="label">Seeds are not taken out of the ledger a second time.</p>
          ) : (
            <CheckField
              name="takeSeed"
              label="Take these seeds out of its ledger"
              hint={
                takenOut.length > 0
                  ? 'Only where none was taken out before. Leave this off for an old test.'
                  : 'Leave this off for an old test whose seeds were taken off long ago.'
              }
              checkedByDefault
            />
          )}
        </div>
      )}
      <TextField
        name="method"
        label="Method"
        hint="Substrate, temperature, light, treatment."
        optional
        list={methodsId}
        defaultValue={correcting?.method}
      />
      <datalist id={methodsId}>
        {props.methodsOffered.map((method) => (
          <option key={method} value={method} />
        ))}
      </datalist>
      <TextAreaField name="notes" label="Notes" optional defaultValue={correcting?.notes} />
      <div className="flex">
        <SubmitButton>{correcting ? 'Save the correction' : 'Save the test'}</SubmitButton>
      </div>
    </Form>
  );
}
