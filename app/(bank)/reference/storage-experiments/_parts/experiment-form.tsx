import { HiddenField, SelectField, TextAreaField, TextField } from '@/app/_components/form/fields';
import { FileField } from '@/app/_components/form/file-field';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import type { StorageRow } from '@/lib/domain/longevity/storage-experiment/storage-row';
import { writeExperiment } from '@/lib/schemas/storage-experiment/read-experiment';
import { addExperiment, changeExperiment } from '../actions';
import { CheckButton } from './check-button';
import { TableField } from './table-field';

interface Props {
  crops: readonly { id: string; name: string }[];
  /** the experiment to change, or none for a new one */
  experiment?: {
    id: string;
    version: number;
    name: string;
    species: string;
    notes: string | null;
    crop: { id: string } | null;
    rows: StorageRow[];
  };
}

export function ExperimentForm({ crops, experiment }: Props) {
  return (
    <Form action={experiment ? changeExperiment : addExperiment} className="sheet grid max-w-3xl gap-5">
      {experiment && (
        <>
          <HiddenField name="id" value={experiment.id} />
          <VersionField version={experiment.version} />
        </>
      )}
      <TextField
        name="name"
        label="Name"
        hint="What it is known by: the seed, the year, who did it."
        defaultValue={experiment?.name}
      />
      <div className="grid gap-5 sm:grid-cols-2">
        <SelectField
          name="cropId"
          label="Crop"
          optional
          empty="none of the bank’s crops"
          options={crops.map(({ id, name }) => ({ value: id, label: name }))}
          defaultValue={experiment?.crop?.id}
        />
        <TextField
          name="species"
          label="Species"
          hint="Scientific name. Left blank, it is the crop’s."
          optional
          defaultValue={experiment?.species}
        />
      </div>
      <TableField defaultValue={experiment ? writeExperiment(experiment.rows) : ''} />
      <FileField
        name="file"
        label="Or choose a file"
        hint="CSV, as spreadsheet programs save it. It takes the place of what stands above."
        accept=".csv,.tsv,.txt,text/csv,text/plain"
      />
      <TextAreaField
        name="notes"
        label="Notes"
        optional
        hint="How the seed was kept, how moisture was measured, what counted as germinated."
        defaultValue={experiment?.notes}
      />
      <div className="flex flex-wrap gap-2">
        <SubmitButton>{experiment ? 'Save in its place' : 'Save and fit'}</SubmitButton>
        <CheckButton />
      </div>
    </Form>
  );
}
