'use client';

import { useId } from 'react';
import { FieldMessage } from '@/app/_components/form/field-message';
import {
  CheckField,
  DateField,
  HiddenField,
  NumberField,
  type Option,
  SelectField,
  TextAreaField,
  TextField,
} from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import {
  type StoredViabilityCounts,
  VIABILITY_CLASSES,
  type ViabilityClass,
  type ViabilityKind,
} from '@/lib/domain/germination/dormancy/viability-kinds';
import { recordViability } from '../actions';
import { CLASS_QUESTIONS, METHOD_HINT } from './viability-words';

export interface ViabilityFormProps {
  lotNumber: string;
  kind: ViabilityKind;
  today: string;
  packets: Option[];
  /** seed of this lot that was taken out for a test and is not named by one */
  takenOut?: Option[];
  /** the germination test whose seed left over was examined; null for seed from a packet */
  tray: { id: string; number: string; left: number } | null;
  /** what stands in the boxes of a correction */
  correcting?: {
    id: string;
    number: string;
    testedOn: string;
    packetId: string | null;
    counts: StoredViabilityCounts;
    method: string | null;
    notes: string | null;
  };
}

/** One form for a tetrazolium or cut test and for its correction. */
export function ViabilityForm(props: ViabilityFormProps) {
  const { kind, tray, correcting, packets } = props;
  const classes: readonly ViabilityClass[] = VIABILITY_CLASSES[kind];
  return (
    <Form action={recordViability} className="sheet grid gap-6">
      <HiddenField name="kind" value={kind} />
      {tray && <HiddenField name="trayId" value={tray.id} />}
      {correcting ? (
        <>
          <HiddenField name="correctsId" value={correcting.id} />
          <TextField
            name="correctionReason"
            label={`What was wrong with ${correcting.number}?`}
            hint="Stays beside the test, so that nobody wonders later."
          />
        </>
      ) : null}
      {correcting && !tray ? (
        <TextField name="lot" label="Lot" defaultValue={props.lotNumber} className="max-w-72" />
      ) : (
        <HiddenField name="lot" value={props.lotNumber} />
      )}
      <DateField
        name="testedOn"
        label="Examined on"
        max={props.today}
        defaultValue={correcting?.testedOn ?? props.today}
        className="max-w-72"
      />
      <fieldset className="grid gap-3">
        <legend className="mb-1 font-semibold">Seeds found</legend>
        <div className="grid items-end gap-4 sm:grid-cols-2">
          {classes.map((name, index) => (
            <NumberField
              key={name}
              name={name}
              label={CLASS_QUESTIONS[name].label}
              hint={CLASS_QUESTIONS[name].hint}
              whole
              optional={index > 0}
              defaultValue={correcting?.counts[name]}
            />
          ))}
        </div>
        {tray && (
          <>
            <p className="label">
              {tray.number} has {tray.left} {tray.left === 1 ? 'seed' : 'seeds'} left over to examine.
            </p>
            <FieldMessage name="trayId" />
          </>
        )}
      </fieldset>
      {!tray && (correcting ? <CameFrom packets={packets} packetId={correcting.packetId} /> : <WhichSeed {...props} />)}
      <Method kind={kind} before={correcting?.method ?? null} />
      <TextAreaField name="notes" label="Notes" optional defaultValue={correcting?.notes} />
      <div className="flex">
        <SubmitButton>{correcting ? 'Save the correction' : 'Save the test'}</SubmitButton>
      </div>
    </Form>
  );
}

function CameFrom({ packets, packetId }: { packets: Option[]; packetId: string | null }) {
  return (
    <div className="grid gap-2">
      <SelectField
        name="packetId"
        label="Seed came from"
        options={packets}
        empty="no packet of this bank"
        defaultValue={packetId}
      />
      <p className="label">Seed is not taken out of the ledger a second time.</p>
    </div>
  );
}

/** Seed that was taken out before, or out of a packet now. */
function WhichSeed({ packets, takenOut = [] }: Pick<ViabilityFormProps, 'packets' | 'takenOut'>) {
  return (
    <div className="grid gap-4">
      {takenOut.length > 0 && (
        <SelectField
          name="withdrawalId"
          label="Seed for this test"
          hint="Seed that was taken out before is not taken out of the ledger again."
          options={takenOut}
          empty="is to be taken out now, or never was in the ledger"
        />
      )}
      {packets.length > 0 && (
        <div className="grid gap-2">
          <SelectField
            name="packetId"
            label="Seed came from"
            options={packets}
            empty="no packet of this bank"
            defaultValue={packets[0]?.value}
          />
          <CheckField
            name="takeSeed"
            label="Take these seeds out of its ledger"
            hint="Stained and cut seed is spent. Leave this off for an old test whose seed was taken off long ago."
            checkedByDefault
          />
        </div>
      )}
    </div>
  );
}

function Method({ kind, before }: { kind: ViabilityKind; before: string | null }) {
  const hintsId = useId();
  return (
    <>
      <TextField name="method" label="How it was done" hint={METHOD_HINT[kind].asked} optional defaultValue={before} />
      <details className="-mt-4" id={hintsId}>
        <summary className="w-fit cursor-pointer py-2.5 font-semibold">How it is usually done</summary>
        <p className="max-w-prose">{METHOD_HINT[kind].usual}</p>
        <p className="label mt-1">
          Common practice, from memory: the method for your crop and your supplier’s sheet decide.
        </p>
      </details>
    </>
  );
}
