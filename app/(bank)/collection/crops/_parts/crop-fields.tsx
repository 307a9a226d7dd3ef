import { SelectField, TextField } from '@/app/_components/form/fields';
import { LIFE_CYCLES, POLLINATIONS, STORAGE_BEHAVIOURS } from '@/lib/domain/reference/crop-facts';

const options = (keys: readonly string[]) => keys.map((key) => ({ value: key, label: key }));

interface Props {
  crop?: {
    name: string;
    scientificName: string;
    family: string;
    pollination: string;
    lifeCycle: string;
    storageBehaviour: string;
  };
}

/** What a crop is: for crops that the reference does not know. */
export function CropFields({ crop }: Props) {
  return (
    <div className="grid gap-5 sm:grid-cols-2">
      <TextField name="name" label="Name" defaultValue={crop?.name} />
      <TextField name="scientificName" label="Scientific name" defaultValue={crop?.scientificName} />
      <TextField name="family" label="Family" defaultValue={crop?.family} />
      <SelectField
        name="pollination"
        label="Pollination"
        empty="Choose …"
        options={options(POLLINATIONS)}
        defaultValue={crop?.pollination}
      />
      <SelectField
        name="lifeCycle"
        label="Life cycle"
        empty="Choose …"
        options={options(LIFE_CYCLES)}
        defaultValue={crop?.lifeCycle}
      />
      <SelectField
        name="storageBehaviour"
        label="Seed in storage"
        hint="Orthodox seed bears drying and freezing; recalcitrant seed dies of it."
        options={options(STORAGE_BEHAVIOURS)}
        defaultValue={crop?.storageBehaviour ?? 'unknown'}
      />
    </div>
  );
}
