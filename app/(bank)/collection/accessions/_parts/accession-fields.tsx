import { DateField, SelectField, TextAreaField, TextField } from '@/app/_components/form/fields';
import { SHARING_TERMS } from '@/lib/domain/stock/sharing-terms';

interface Props {
  crops: { id: string; name: string }[];
  accession?: {
    name: string;
    cropId: string;
    donor: string | null;
    acquiredOn: string | null;
    origin: string | null;
    notes: string | null;
    sharing: string;
    sharingTerms: string | null;
  };
  today: string;
}

/** What is known of an accession: the same fields whether it is new or changed. */
export function AccessionFields({ crops, accession, today }: Props) {
  return (
    <>
      <TextField
        name="name"
        label="Name"
        hint="As the variety or population is called."
        defaultValue={accession?.name}
      />
      <SelectField
        name="cropId"
        label="Crop"
        empty="Choose …"
        options={crops.map((crop) => ({ value: crop.id, label: crop.name }))}
        defaultValue={accession?.cropId}
      />
      <div className="grid gap-5 sm:grid-cols-2">
        <TextField name="donor" label="Donor or source" optional defaultValue={accession?.donor} />
        <DateField name="acquiredOn" label="Acquired on" optional max={today} defaultValue={accession?.acquiredOn} />
      </div>
      <TextField
        name="origin"
        label="Origin"
        hint="Where it was grown or collected before."
        optional
        defaultValue={accession?.origin}
      />
      <SelectField
        name="sharing"
        label="Sharing"
        hint="Whether its seed may be given away."
        options={SHARING_TERMS.map(({ key, label }) => ({ value: key, label }))}
        defaultValue={accession?.sharing ?? 'may'}
        className="sm:max-w-xs"
      />
      <TextAreaField
        name="sharingTerms"
        label="Terms of sharing"
        hint="What a recipient must agree to; or why it may not be shared."
        optional
        rows={2}
        defaultValue={accession?.sharingTerms}
      />
      <TextAreaField name="notes" label="Notes" optional defaultValue={accession?.notes} />
    </>
  );
}
