import { DateField, SelectField, TextAreaField, TextField } from '@/app/_components/form/fields';
import { RECIPIENT_KINDS } from '@/lib/domain/stock/recipient-kinds';

interface Props {
  today: string;
  request?: {
    recipient: string;
    recipientKind: string;
    contact: string | null;
    purpose: string | null;
    askedOn: string;
    notes: string | null;
  };
}

/** Who asks for seed, and what for: the same fields whether the request is new or changed. */
export function RequestFields({ today, request }: Props) {
  return (
    <>
      <div className="grid gap-5 sm:grid-cols-2">
        <TextField
          name="recipient"
          label="For whom"
          hint="Everybody who may look at this bank sees this name."
          defaultValue={request?.recipient}
        />
        <SelectField
          name="recipientKind"
          label="Kind of recipient"
          hint="So that the list can be read at a glance."
          empty="Choose …"
          options={RECIPIENT_KINDS.map(({ key, label }) => ({ value: key, label }))}
          defaultValue={request?.recipientKind}
        />
      </div>
      <TextField
        name="contact"
        label="Contact"
        hint="Only what you need to send the seed, and with their consent. Volunteers and stewards see it."
        optional
        defaultValue={request?.contact}
      />
      <TextField
        name="purpose"
        label="What for"
        hint="Such as: a school bed, a trial."
        optional
        defaultValue={request?.purpose}
      />
      <DateField
        name="askedOn"
        label="Asked on"
        max={today}
        defaultValue={request?.askedOn ?? today}
        className="sm:max-w-xs"
      />
      <TextAreaField name="notes" label="Notes" optional defaultValue={request?.notes} />
    </>
  );
}
